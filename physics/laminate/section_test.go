package laminate_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

func TestPublishedLayerRows(t *testing.T) {
	// Mat of 600 g/m2 at 33 %, compressive modulus 7200 MPa, a strip of 10 mm: E I
	// about the neutral axis for four levers, in N mm2.
	for _, r := range []struct{ lever, EI float64 }{
		{10.149, 9281917}, {8.899, 7139017}, {7.649, 5277367}, {6.399, 3696967},
	} {
		perWidth := laminate.LayerEI(si.MPa(7200), si.MM(1.250), si.MM(r.lever)) // N m = N mm2/mm times 1e-3
		near(t, "E I ["+lr+"]", perWidth*1e3*10, r.EI, 1)
	}
}

// sixPly is mat 300, mat 450, roving 600, mat 450, roving 600, mat 450, outside
// first, by the class rules' tensile moduli.
func sixPly(t *testing.T) []laminate.Layer {
	mat, roving := classRule(t, laminate.CSM, 0.30), classRule(t, laminate.Roving, 0.48)
	layer := func(gsm, glass float64, p laminate.ClassProperties) laminate.Layer {
		return laminate.Layer{
			Thickness: laminate.ClassThickness(si.GSM(gsm), si.Ratio(glass)),
			Tension:   p.TensileModulus, Compression: p.CompressiveModulus,
		}
	}
	return []laminate.Layer{
		layer(300, 0.30, mat), layer(450, 0.30, mat), layer(600, 0.48, roving),
		layer(450, 0.30, mat), layer(600, 0.48, roving), layer(450, 0.30, mat),
	}
}

func TestSections(t *testing.T) {
	six := laminate.NewSection(sixPly(t))
	overlay := func(E1, t1, E2, t2 float64) laminate.Section {
		return laminate.NewSection([]laminate.Layer{
			{Thickness: si.MM(t1), Tension: si.GPa(E1)},
			{Thickness: si.MM(t2), Tension: si.GPa(E2)},
		})
	}
	o := overlay(7, 6, 14.5, 3)
	soft, same := overlay(9, 6, 7, 4), overlay(7, 6, 7, 6)
	row := func(what string, got, want, tol float64) figure {
		return figure{what, got, want, tol * want, computed}
	}
	checkFigures(t, []figure{
		row("six-ply: thickness, mm", six.Thickness.MM(), 5.40495, 1e-5),
		row("six-ply: neutral axis, mm", six.NeutralAxis.MM(), 2.78877, 1e-5),
		row("six-ply: EI, N mm2/mm", six.EI*1e3, 96748.5, 1e-5),
		row("six-ply: EA, N/mm", six.EA/1e3, 46617.6, 1e-5),
		row("six-ply: membrane modulus, MPa", six.Membrane().MPa(), 8624.98, 1e-6),
		row("six-ply: flexural modulus, MPa", six.Flexural().MPa(), 7352.77, 1e-6),
		row("hull 6 mm + overlay 3 mm: neutral axis", o.NeutralAxis.MM(), 5.28947, 1e-5),
		row("hull 6 mm + overlay 3 mm: EI", o.EI*1e3, 591335.5, 1e-5),
		row("hull 6 mm + overlay 3 mm: EA", o.EA/1e3, 85500, 1e-9),
		row("hull 9 GPa + overlay 7 GPa: neutral axis", soft.NeutralAxis.MM(), 4.70732, 1e-5),
		row("hull 9 GPa + overlay 7 GPa: EI", soft.EI*1e3, 660308.9, 1e-6),
		row("like on like: EI is E (2t)^3/12", same.EI*1e3, 7000*12*12*12/12., 1e-12),
	})
}

func drawLayers(t *rapid.T) []laminate.Layer {
	n := rapid.IntRange(1, 8).Draw(t, "layers")
	out := make([]laminate.Layer, n)
	for i := range out {
		out[i] = laminate.Layer{
			Thickness:   si.MM(rapid.Float64Range(0.1, 5).Draw(t, "t")),
			Tension:     si.GPa(rapid.Float64Range(0.05, 40).Draw(t, "Et")),
			Compression: si.GPa(rapid.Float64Range(0.05, 40).Draw(t, "Ec")),
		}
	}
	return out
}

func turnedRound(layers []laminate.Layer) []laminate.Layer {
	out := slices.Clone(layers)
	slices.Reverse(out)
	return out
}

func TestSectionPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := drawLayers(t)
		s := laminate.NewSection(layers)
		T := float64(s.Thickness)

		// EI from moments about any other axis, less EA times the shift squared.
		origin := rapid.Float64Range(-0.02, 0.02).Draw(t, "origin")
		EI, z := 0.0, 0.0
		for _, l := range layers {
			EI += laminate.LayerEI(l.Tension, l.Thickness, si.Length(z+float64(l.Thickness)/2-origin))
			z += float64(l.Thickness)
		}
		shift := float64(s.NeutralAxis) - origin
		near(t, "EI about the neutral axis", EI-s.EA*shift*shift, s.EI, 1e-11*(EI+s.EI))

		back := laminate.NewSection(turnedRound(layers))
		near(t, "neutral axis of the list turned round", float64(back.NeutralAxis), T-float64(s.NeutralAxis), 1e-12*T)
		within(t, "EI of the list turned round", back.EI, s.EI, 1e-10)

		// Against the laminate theory: with nu = 0 a strip is D11 about its own axis.
		plies := make([]laminate.Ply, len(layers))
		for i, l := range layers {
			plies[i] = laminate.Ply{Lamina: laminate.Isotropic(l.Tension, 0), Thickness: l.Thickness}
		}
		abd := laminate.NewStiffness(plies)
		within(t, "EA = A11", s.EA, abd.A[0][0], 1e-12)
		within(t, "EI = D11 - B11^2/A11", s.EI, abd.D[0][0]-abd.B[0][0]*abd.B[0][0]/abd.A[0][0], 1e-9)
		within(t, "EI = 1/d11", s.EI, 1/abd.Compliance().D[0][0], 1e-9)
	})
}

func TestBentSectionPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers, sag := drawLayers(t), rapid.Bool().Draw(t, "first face in compression")
		s := laminate.NewBentSection(layers, sag)
		T, zn := float64(s.Thickness), float64(s.NeutralAxis)
		if zn <= 0 || zn >= T {
			t.Fatalf("neutral axis %v outside 0 to %v", zn, T)
		}

		// Force and moment of unit curvature, added up over thin slices by sign of strain.
		force, moment, z := 0.0, 0.0, 0.0
		for _, l := range layers {
			const slices = 400
			dz := float64(l.Thickness) / slices
			for range slices {
				arm := z + dz/2 - zn
				E := float64(l.Tension)
				if (arm < 0) == sag {
					E = float64(l.Compression)
				}
				force += E * arm * dz
				moment += E * (arm*arm + dz*dz/12) * dz
				z += dz
			}
		}
		within(t, "EI by slices", moment, s.EI, 1e-3)
		near(t, "force of pure bending by slices", force, 0, 1e-4*s.EA*T)

		back := laminate.NewBentSection(turnedRound(layers), !sag)
		near(t, "neutral axis of the list turned round", float64(back.NeutralAxis), T-zn, 1e-11*T)
		within(t, "EI of the list turned round", back.EI, s.EI, 1e-9)

		for i := range layers {
			layers[i].Compression = 0 // the same as in tension
		}
		one, plain := laminate.NewBentSection(layers, sag), laminate.NewSection(layers)
		near(t, "neutral axis with one modulus", float64(one.NeutralAxis), float64(plain.NeutralAxis), 1e-12*T)
		within(t, "EI with one modulus", one.EI, plain.EI, 1e-11)
	})
}

// One layer, moduli Ec and Et: the axis divides the thickness as sqrt(Et) to
// sqrt(Ec) (identity: Ec a^2 = Et b^2, a + b = T), and EI = (Ec a^3 + Et b^3)/3.
func TestBentSectionOfOneLayer(t *testing.T) {
	layer := laminate.Layer{Thickness: si.MM(10), Tension: si.GPa(9), Compression: si.GPa(4)}
	s := laminate.NewBentSection([]laminate.Layer{layer}, true)
	near(t, "neutral axis, mm", s.NeutralAxis.MM(), 6, 1e-12) // 3 to 2
	near(t, "EI, N m", s.EI, (4e9*0.006*0.006*0.006+9e9*0.004*0.004*0.004)/3, 1e-9)
	other := laminate.NewBentSection([]laminate.Layer{layer}, false)
	near(t, "the other way, mm", other.NeutralAxis.MM(), 4, 1e-12)
}

// The six-ply marine laminate bends stiffer one way than the other.
func TestBentSixPly(t *testing.T) {
	layers := sixPly(t)
	in, out := laminate.NewBentSection(layers, true), laminate.NewBentSection(layers, false)
	tension := laminate.NewSection(layers)
	if in.EI >= tension.EI || out.EI >= tension.EI {
		t.Errorf("EI %v and %v: want both below the all-tension %v, mat and roving being softer in compression", in.EI, out.EI, tension.EI)
	}
	if in == out {
		t.Error("an unsymmetric laminate bends alike both ways")
	}
}
