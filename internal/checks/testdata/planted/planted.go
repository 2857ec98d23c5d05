// Package planted holds faults for the tests of package checks to find. Each
// is marked on its line; lines without a mark must pass.
package planted

import (
	"math/rand/v2"
	"time"

	"scarfwright/physics/si"
)

const two = 2
const typed si.Length = 2

type deep struct{ t si.Temp }

func faults(l, m si.Length, p si.Pressure, t, u si.Temp, q deep) {
	_ = l * m                                 // fault: Length * Length
	_ = l / m                                 // fault: Length / Length
	_ = (l + m) * (l)                         // fault: Length * Length
	_ = si.Length(2) * l                      // fault: Length * Length
	_ = l * typed                             // fault: Length * Length
	_ = l * si.MM(3)                          // fault: Length * Length
	_ = p / si.MPa(4)                         // fault: Pressure / Pressure
	_ = float64(l/m) + float64(l/m/m)         // fault: Length / Length
	_ = float64(p * p)                        // fault: Pressure * Pressure
	l *= m                                    // fault: Length * Length
	l /= m                                    // fault: Length / Length
	_ = t + u                                 // fault: Temp + Temp
	_ = t - q.t                               // fault: Temp - Temp
	t += u                                    // fault: Temp + Temp
	t -= si.Temp(5)                           // fault: Temp - Temp
	_ = func() si.Length { return 2 * l * m } // fault: Length * Length
	_ = time.Now()                            // fault: time.Now
	_ = rand.Float64()                        // fault: rand.Float64
	_ = time.Since                            // fault: time.Since
}

func generic[Q si.Quantity](x, y Q) Q {
	return x * y // fault: Q * Q
}

func sound(l, m si.Length, r si.Ratio, t si.Temp, d si.TempDiff, n int) {
	_ = 2 * l
	_ = l / 3
	_ = two * l
	_ = (1 + two) * l
	_ = l * 1e-3
	_ = l + m - l
	_ = r * r / r
	_ = float64(l) * float64(m)
	_ = si.Length(n)
	_ = si.Scale(l, n) + si.Scale(l, r) + si.Scale(l, 0.5)
	_ = float64(l / m)
	_ = si.Ratio((l - m) / (l + m))
	_ = l.Times(m)
	_ = t.Add(d)
	_ = t.Sub(t)
	_ = t + 5
	_ = d + d - d
	_ = t < t
	l *= 2
	_ = rand.New(rand.NewPCG(1, 2)).Float64()
	_ = time.Duration(n) * time.Second
	_ = float64(n) * float64(r)
}
