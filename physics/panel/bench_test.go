package panel

import "testing"

func benchLinear(b *testing.B, kind string, o Options) {
	b.Helper()
	for b.Loop() {
		m, err := Prepare(referencePanel(kind, Clamped), o)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := m.Linear(); err != nil {
			b.Fatal(err)
		}
	}
}

func benchAgain(b *testing.B, kind string, o Options) {
	b.Helper()
	m, err := Prepare(referencePanel(kind, Clamped), o)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		m.SetPressure(m.panel.Pressure) // so that nothing is kept
		if _, err := m.Linear(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLinearOverlayWhole(b *testing.B)   { benchLinear(b, "overlay", Options{Whole: true}) }
func BenchmarkLinearOverlayQuarter(b *testing.B) { benchLinear(b, "overlay", Options{}) }
func BenchmarkLinearScarfWhole(b *testing.B)     { benchLinear(b, "scarf", Options{Whole: true}) }
func BenchmarkLinearScarfQuarter(b *testing.B)   { benchLinear(b, "scarf", Options{}) }

func BenchmarkAgainOverlayWhole(b *testing.B) { benchAgain(b, "overlay", Options{Whole: true}) }
func BenchmarkAgainScarfWhole(b *testing.B)   { benchAgain(b, "scarf", Options{Whole: true}) }
func BenchmarkAgainScarfQuarter(b *testing.B) { benchAgain(b, "scarf", Options{}) }

func BenchmarkOneZoneOverlayWhole(b *testing.B) {
	p := referencePanel("overlay", Clamped)
	m, err := Prepare(p, Options{Whole: true})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if err := m.SetLayup(1, p.Zones[0].Layup); err != nil {
			b.Fatal(err)
		}
		if _, err := m.Linear(); err != nil {
			b.Fatal(err)
		}
	}
}

func benchLarge(b *testing.B, kind string, o Options) {
	b.Helper()
	for b.Loop() {
		m, err := Prepare(referencePanel(kind, Clamped), o)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := m.LargeDeflection(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLargeOverlayWhole(b *testing.B)   { benchLarge(b, "overlay", Options{Whole: true}) }
func BenchmarkLargeOverlayQuarter(b *testing.B) { benchLarge(b, "overlay", Options{}) }
func BenchmarkLargeScarfWhole(b *testing.B)     { benchLarge(b, "scarf", Options{Whole: true}) }
