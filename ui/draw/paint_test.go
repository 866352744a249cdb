package draw

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestGradientAlong(t *testing.T) {
	p := Horizontal(Stop{20, RGBA(100, 0, 0, 200)}, Stop{10, RGBA(0, 0, 0, 0)})
	assert.Equal(t, RGBA(0, 0, 0, 0), p.Along(-5))
	assert.Equal(t, RGBA(50, 0, 0, 100), p.Along(15))
	assert.Equal(t, RGBA(100, 0, 0, 200), p.Along(99))
	assert.Equal(t, p.Along(15), p.At(Pt(15, 3)))
	assert.Equal(t, RGBA(50, 0, 0, 100), Vertical(p.Stops...).At(Pt(3, 15)))
	assert.Equal(t, Gray(9), Solid(Gray(9)).At(Pt(1, 1)))
}

// Ensure that two stops at one place make a step.
func TestGradientStep(t *testing.T) {
	p := Horizontal(Stop{0, Gray(0)}, Stop{10, Gray(0)}, Stop{10, Gray(200)}, Stop{20, Gray(200)})
	assert.Equal(t, Gray(0), p.Along(9.999))
	assert.Equal(t, Gray(200), p.Along(10))
}

// Ensure that Smooth keeps the stops, keeps them in order and follows Mix.
func TestSmooth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyColor().Draw(t, "a"), anyColor().Draw(t, "b")
		n := rapid.IntRange(0, 20).Draw(t, "n")
		stops := Smooth(n, Stop{100, b}, Stop{0, a})
		assert.Len(t, stops, n+2)
		p := Horizontal(stops...)
		assert.True(t, p.ok())
		assert.Equal(t, a, p.Along(0))
		assert.Equal(t, b, p.Along(100))
		for _, s := range stops {
			want := Mix(a, b, s.At/100)
			for _, d := range []int{int(want.R) - int(s.Color.R), int(want.G) - int(s.Color.G), int(want.B) - int(s.Color.B), int(want.A) - int(s.Color.A)} {
				assert.InDelta(t, 0, d, 1, "up to rounding")
			}
		}
	})
}
