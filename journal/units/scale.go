package units

import (
	"math"
	"math/big"
	"strings"
)

// maxDecimals is enough for any float64 within the limits of this package to be
// told from its neighbours in any of its units.
const maxDecimals = 40

// exact returns the rational value of x, which must be finite.
func exact(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }

// nearest rounds once to the nearest float64.
func nearest(x *big.Rat) float64 {
	f, _ := x.Float64()
	return f
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// shortest returns the decimal of v with the fewest places that same accepts.
func shortest(v *big.Rat, same func(*big.Rat) bool) (decimal *big.Rat) {
	for places := 0; places < maxDecimals; places++ {
		if d := rounded(v, places); same(d) {
			return d
		}
	}
	return v
}

// rounded returns v rounded half away from zero to a number of decimal places.
func rounded(v *big.Rat, places int) *big.Rat {
	d, _ := new(big.Rat).SetString(v.FloatString(places))
	return d
}

// eighth returns the multiple of 1/8 nearest to v.
func eighth(v *big.Rat) *big.Rat {
	n := rounded(new(big.Rat).Mul(v, big.NewRat(8, 1)), 0)
	return n.Quo(n, big.NewRat(8, 1))
}

var eighthGlyph = [8]string{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"}

// mixed prints a value that is not negative: as 1½ when it is a multiple of 1/8,
// else as a decimal.
func mixed(v *big.Rat) string {
	e := new(big.Rat).Mul(v, big.NewRat(8, 1))
	if !e.IsInt() {
		return plain(v)
	}
	whole, rest := new(big.Int).DivMod(e.Num(), big.NewInt(8), new(big.Int))
	if glyph := eighthGlyph[rest.Int64()]; glyph != "" {
		if whole.Sign() == 0 {
			return glyph
		}
		return whole.String() + glyph
	}
	return whole.String()
}

// plain prints a decimal without needless zeros.
func plain(v *big.Rat) string {
	s := v.FloatString(maxDecimals)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// pair splits v of the small unit into whole big units and the rest.
func pair(v *big.Rat, ratio int64) (whole *big.Int, rest *big.Rat) {
	q := new(big.Rat).Quo(v, big.NewRat(ratio, 1))
	whole = new(big.Int).Quo(q.Num(), q.Denom())
	taken := new(big.Rat).SetInt(whole)
	return whole, new(big.Rat).Sub(v, taken.Mul(taken, big.NewRat(ratio, 1)))
}

// pairTyped prints a value that is not negative in a big unit of ratio small ones:
// 9 ft 6½ in where the small unit comes to exact eighths, else as a decimal of the
// big unit unless both together need fewer digits: 2.35 ft, 1 lb 4.37 oz. alone
// says that the small unit by itself is read back as the big one, as 8 oz is.
func pairTyped(si float64, small *big.Rat, ratio int64, bigName, smallName string, alone bool) string {
	v := asTyped(si, small)
	if new(big.Rat).Mul(v, big.NewRat(8, 1)).IsInt() {
		return pairText(v, ratio, bigName, smallName, alone)
	}
	whole := asTyped(si, new(big.Rat).Mul(small, big.NewRat(ratio, 1)))
	if inBig := plain(whole); places(inBig) <= places(plain(v))+1 {
		return inBig + " " + bigName
	}
	return pairText(v, ratio, bigName, smallName, alone)
}

func pairText(v *big.Rat, ratio int64, bigName, smallName string, alone bool) string {
	whole, rest := pair(v, ratio)
	switch {
	case whole.Sign() == 0 && alone:
		return mixed(rest) + " " + smallName
	case rest.Sign() == 0:
		return whole.String() + " " + bigName
	}
	return whole.String() + " " + bigName + " " + mixed(rest) + " " + smallName
}

// places counts the digits after the point.
func places(decimal string) int {
	_, after, _ := strings.Cut(decimal, ".")
	return len(after)
}

// asTyped returns the number of unit that a person typed to get the stored value: the
// shortest decimal that gives it. unit is the size of the unit in the stored SI unit.
func asTyped(si float64, unit *big.Rat) *big.Rat {
	same := func(d *big.Rat) bool { return nearest(new(big.Rat).Mul(d, unit)) == si }
	v := new(big.Rat).Quo(exact(si), unit)
	return shortest(v, same)
}

// roundTo returns si rounded to the places a tool of that unit shows, or to an
// eighth within half a hundredth of it where fractions are used.
func roundTo(si float64, unit *big.Rat, places int, fractions bool) float64 {
	v := new(big.Rat).Quo(exact(si), unit)
	d := rounded(v, places)
	if fractions {
		e := eighth(v)
		if off := new(big.Rat).Sub(v, e); off.Abs(off).Cmp(big.NewRat(1, 200)) <= 0 {
			d = e
		}
	}
	return nearest(d.Mul(d, unit))
}
