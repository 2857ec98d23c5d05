package kinetics

// For the tests that measure the order of the integrator and the power of the
// quadrature by themselves.
var (
	DormandPrince = dormandPrince
	Integrate     = integrate
)
