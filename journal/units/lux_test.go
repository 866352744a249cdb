package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLuxString(t *testing.T) {
	for lux, want := range map[Lux]string{
		12345: "12000 lx", 107527: "110000 lx", 9.96: "10 lx", 3.4: "3.4 lx", 1: "1 lx",
		0.3: "0.3 lx", 0.0234: "0.023 lx", 0.0205: "0.021 lx", 0.001: "0.001 lx",
		0.0001: "0.0001 lx", 0.00025: "0.00025 lx", 0.00009999: "under 0.0001 lx", 0: "under 0.0001 lx",
		-1: "unknown", Lux(math.Inf(1)): "unknown",
	} {
		assert.Equal(t, want, lux.String(), float64(lux))
	}
	assert.Equal(t, "unknown", Lux(math.NaN()).String())
}

func TestLuxRange(t *testing.T) {
	for _, c := range []struct {
		a, b Lux
		out  string
	}{
		{0.02, 0.05, "0.02 to 0.05 lx"},
		{0.05, 0.02, "0.02 to 0.05 lx"},
		{0.0201, 0.0199, "0.02 lx"},
		{0.00002, 0.003, "under 0.003 lx"},
		{0, 0.00005, "under 0.0001 lx"},
		{9.4, 120, "9.4 to 120 lx"},
		{-1, 3, "unknown"},
		{1, Lux(math.Inf(1)), "unknown"},
		{Lux(math.NaN()), 1, "unknown"},
	} {
		assert.Equal(t, c.out, LuxRange(c.a, c.b))
	}
}
