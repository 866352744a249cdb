package light

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"gloamline/journal/units"
)

// The models in this file are not those of the package. They are other people's
// curves, kept here to show how far the package agrees with them.

// supplement is a fit of the Explanatory Supplement: log10 lux = l0 + l1 x + l2 x^2 +
// l3 x^3 with x = h/90, piece by piece.
func supplement(t testing.TB, fit string, h float64) float64 {
	for _, r := range table(t, "coeff_illuminance.csv") {
		if r["fit"] != fit || h <= r.num(t, "k_or_lo") || h > r.num(t, "hi") {
			continue
		}
		x := h / 90
		return pow10(r.num(t, "l0") + x*(r.num(t, "l1")+x*(r.num(t, "l2")+x*r.num(t, "l3"))))
	}
	return 0
}

// supplementMoon adds phase and distance to the fit of the full moon.
func supplementMoon(t testing.TB, h, phase, parallax float64) float64 {
	return supplement(t, "es_moon", h) * pow10(-8.68e-3*phase-2.2e-9*math.Pow(phase, 4)) * math.Pow(parallax/0.951, 2)
}

// air171 is the atmosphere of USNO Circular 171 (Janiczek & DeYoung 1987).
func air171(h float64) float64 {
	const x = 753.66156
	u, c := math.Sin(h*math.Pi/180), math.Cos(h*math.Pi/180)
	s := math.Asin(x * c / (x + 1))
	m := x*(math.Cos(s)-u) + math.Cos(s)
	return math.Exp(-0.21*m)*u + 0.0289*math.Exp(-0.042*m)*(1+(h+90)*u/57.29577951)
}

// phase171 is the Circular's moon at an elongation in degrees.
func phase171(elongation float64) float64 {
	e := elongation * math.Pi / 180
	if elongation >= 179.99 {
		return 0.892 + 0.0344*math.Pi
	}
	return 0.892*math.Exp(-3.343/math.Pow(math.Tan(e/2), 0.632)) + 0.0344*(math.Sin(e)-e*math.Cos(e))
}

func moon171(h, phase float64) float64 {
	e := (180 - phase) * math.Pi / 180
	z := (h + 0.95) * math.Pi / 180
	return 0.418 * phase171(180-phase) / (1 - 0.005*math.Cos(e) - 0.03*math.Sin(z)) * air171(h)
}

// moon96 is the moon of the US Naval Observatory's program of 1996.
func moon96(h, phase, parallax float64) float64 {
	return brown(h) * 3.277e-6 * phase171(180-phase) * math.Pow(parallax/0.951, 2)
}

// Ensure that every column of lux_model_check.csv is reproduced to 1e-4: Brown's
// curve of this package, and the curves of others written down above.
func TestModelTable(t *testing.T) {
	near := func(want, got float64, what string, r row) {
		assert.InEpsilon(t, want, got, 1e-4, "%s of %v", what, r)
	}
	for _, r := range table(t, "lux_model_check.csv") {
		h := r.num(t, "alt_deg")
		if r["body"] == "sun" {
			near(r.num(t, "brown96_lux"), brown(h), "brown", r)
			near(r.num(t, "brown96_minus_floor_lux"), float64(Sunlight(units.Degrees(h))), "Sunlight", r)
			near(r.num(t, "expsup_lux"), supplement(t, "es_sun", h), "supplement", r)
			near(r.num(t, "circular171_lux"), 133775*air171(h), "circular", r)
			continue
		}
		phase, parallax := r.num(t, "phase_angle_deg"), r.num(t, "parallax_deg")
		near(r.num(t, "brown96_lux"), moon96(h, phase, parallax), "brown", r)
		near(r.num(t, "expsup_lux"), supplementMoon(t, h, phase, parallax), "supplement", r)
		near(r.num(t, "circular171_lux"), moon171(h, phase), "circular", r)
	}
}

// Ensure that the package stays near the other models where they are meant to hold:
// twilight within 5 % of the Explanatory Supplement down to -9; the shape of the moon
// within 6 % of it from -0.7 to 90; moonlight of every model within 35 % from 10 up and
// phase angles 7 to 120 (their full moons differ by the surge at opposition).
func TestAgreementWithModels(t *testing.T) {
	for h := -9.0; h <= 19; h += 0.1 {
		assert.InEpsilon(t, supplement(t, "es_sun", h), float64(Sunlight(units.Degrees(h))), 0.07, "%v", h)
		if h <= -0.9 {
			assert.InEpsilon(t, supplement(t, "es_sun", h), float64(Sunlight(units.Degrees(h))), 0.05, "%v", h)
		}
	}
	for h := -0.7; h <= 89.9; h += 0.3 {
		assert.InEpsilon(t, supplement(t, "es_moon", h), float64(Moonlight(units.Degrees(h), 0, 0.951)), 0.06, "%v", h)
	}
	for _, h := range []float64{10, 20, 30, 45, 60} {
		for _, phase := range []float64{7, 30, 60, 90, 120} {
			got := float64(Moonlight(units.Degrees(h), units.Degrees(phase), 0.951))
			for _, other := range []float64{supplementMoon(t, h, phase, 0.951), moon171(h, phase), moon96(h, phase, 0.951)} {
				assert.InDelta(t, 0, math.Log10(got/other), math.Log10(1.35), "%v %v", h, phase)
			}
		}
	}
}
