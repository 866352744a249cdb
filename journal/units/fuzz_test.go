package units

import "testing"

// Ensure that no text makes a parser panic, and that what it accepts is in range,
// prints, and reads back to the same value and unit.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"1 lb 10 oz", "1lb10", "1 10", "2½ lb", "0,74 kg", "1 1/2 in", `9'6"`, "3/4 in", "14,2 °C",
		"58 F", "-0.12 m", "1,500 m", "minus 3", "1-1/2", "1 ½", "2.10", "1/0", "⅓ in", "NaN", "1e9", "½½", "--1", "1lb.5oz", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if l, err := ParseLength(s, Inch); err == nil {
			if again, err := ParseLength(l.String(), Millimetre); err != nil || again != l || l.M <= 0 {
				t.Errorf("%q: %+v printed %q read %+v, %v", s, l, l, again, err)
			}
		}
		if l, err := ParseLevel(s, Metre); err == nil {
			if again, err := ParseLevel(l.String(), Millimetre); err != nil || again.Unit != l.Unit || !close(float64(again.M), float64(l.M)) {
				t.Errorf("%q: level %+v printed %q read %+v, %v", s, l, l, again, err)
			}
		}
		if w, err := ParseWeight(s, Pound); err == nil {
			if again, err := ParseWeight(w.String(), Gram); err != nil || again != w || w.G <= 0 {
				t.Errorf("%q: %+v printed %q read %+v, %v", s, w, w, again, err)
			}
		}
		if c, err := ParseTemperature(s, DegreeCelsius); err == nil {
			if again, err := ParseTemperature(c.String(), DegreeFahrenheit); err != nil || again.Unit != c.Unit || !close(float64(again.C), float64(c.C)) {
				t.Errorf("%q: %+v printed %q read %+v, %v", s, c, c, again, err)
			}
		}
	})
}

// close allows for levels and temperatures a hair from zero (1e-30 m), which can be
// typed but are not printed.
func close(a, b float64) bool { return a == b || a-b < 1e-20 && b-a < 1e-20 }

func BenchmarkParseWeight(b *testing.B) {
	for b.Loop() {
		if _, err := ParseWeight("1 lb 10 oz", Gram); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWeightString(b *testing.B) {
	w := WeightOf(1.625, Pound)
	for b.Loop() {
		_ = w.String()
	}
}
