package units

import (
	"fmt"
	"math/big"
	"strings"
)

// unit is one spelling family of a quantity. pairs names the smaller unit that
// may follow it (oz after lb) with how many make one.
type unit struct {
	name   string // as stored and printed
	si     *big.Rat
	words  []string
	stored string // unit kept for the value: oz is kept as lb
	small  string // name of the unit that may follow
	ratio  int64
	bare   bool // a bare number after it is the small unit: 1lb10
}

// quantity is a family of units with its limits in SI and its words.
type quantity struct {
	noun     string // "a weight"
	units    []unit
	listed   string // "g, kg, lb and oz"
	min, max float64
	minText  string
	maxText  string
	signed   bool
}

func (q *quantity) find(word string) *unit {
	for i := range q.units {
		for _, w := range q.units[i].words {
			if w == word {
				return &q.units[i]
			}
		}
	}
	return nil
}

// parse reads text with def for a bare number and returns the SI value and the
// unit to keep.
func (q *quantity) parse(text, def string) (si float64, kept string, err error) {
	m, bad := scan(text, nil)
	if bad != nil {
		return 0, "", bad
	}
	sum, u, bad := q.sum(m, def)
	if bad != nil {
		return 0, "", bad
	}
	if m.negative {
		sum.Neg(sum)
	}
	si = nearest(sum)
	if bad := q.check(m.text, si); bad != nil {
		return 0, "", bad
	}
	return si, u.stored, nil
}

func (q *quantity) check(text string, si float64) *Error {
	switch {
	case !finite(si):
		return refuse(OutOfRange, text, "%s is a plain number", q.noun)
	case !q.signed && si < 0:
		return refuse(OutOfRange, text, "%s is not less than nothing", q.noun)
	case !q.signed && si == 0:
		return refuse(OutOfRange, text, "%s is more than nothing; leave the field empty if it is not known", q.noun)
	case si < q.min:
		return refuse(OutOfRange, text, "%s is less than any here; the least is %s", text, q.minText)
	case si > q.max:
		return refuse(OutOfRange, text, "%s is more than any here; the most is %s", text, q.maxText)
	}
	return nil
}

// sum adds the parts: one number, or whole big units and then smaller ones.
func (q *quantity) sum(m measure, def string) (*big.Rat, *unit, *Error) {
	first := m.parts[0]
	if len(m.parts) > 1 && first.unitWord == "" {
		return nil, nil, refuse(Ambiguous, m.text, "“%s” has no unit after %s; %s", m.text, first.number, q.hint(m, def))
	}
	word := first.unitWord
	if word == "" {
		word = def
		if bad := q.poundsAndOunces(m, def); bad != nil {
			return nil, nil, bad
		}
	}
	u := q.find(word)
	if u == nil {
		return nil, nil, refuse(UnknownUnit, m.text, "“%s” is not a unit of %s here; use %s", word, strings.TrimPrefix(q.noun, "a "), q.listed)
	}
	total := new(big.Rat).Mul(first.value, u.si)
	switch len(m.parts) {
	case 1:
		return total, u, nil
	case 2:
	default:
		return nil, nil, refuse(Ambiguous, m.text, "“%s” has more numbers than %s", m.text, q.noun)
	}
	rest := m.parts[1]
	small := q.find(rest.unitWord)
	switch {
	case rest.unitWord == "" && u.bare:
		small = q.find(u.small)
	case rest.unitWord == "":
		return nil, nil, refuse(Ambiguous, m.text, "“%s” has no unit after %s", m.text, rest.number)
	case small == nil:
		return nil, nil, refuse(UnknownUnit, m.text, "“%s” is not a unit of %s here; use %s", rest.unitWord, strings.TrimPrefix(q.noun, "a "), q.listed)
	}
	if u.small == "" || small.name != u.small {
		return nil, nil, refuse(Ambiguous, m.text, "%s does not follow %s; write one number, or the larger unit first", small.name, u.name)
	}
	if !first.whole {
		return nil, nil, refuse(Ambiguous, m.text, "write whole %s before %s, or all of it in %s", u.name, small.name, u.name)
	}
	if rest.value.Cmp(big.NewRat(u.ratio, 1)) >= 0 {
		return nil, nil, refuse(OutOfRange, m.text, "%s %s is not less than 1 %s, which is %d %s", rest.number, small.name, u.name, u.ratio, small.name)
	}
	return total.Add(total, rest.value.Mul(rest.value, small.si)), u, nil
}

// hint shows how two bare numbers could be written.
func (q *quantity) hint(m measure, def string) string {
	u := q.find(def)
	if u == nil || u.small == "" || len(m.parts) != 2 {
		for i := range q.units {
			if q.units[i].bare {
				u = &q.units[i]
				break
			}
		}
	}
	if u == nil || u.small == "" || len(m.parts) != 2 {
		return "write one number with its unit"
	}
	return fmt.Sprintf("write %s %s %s %s, or one number", m.parts[0].number, u.name, m.parts[1].number, u.small)
}

// poundsAndOunces refuses a bare 2.10 where pounds are meant: it is written for
// 2 lb 10 oz as often as for a decimal. 2.1 and 2.5 are taken as decimals.
func (q *quantity) poundsAndOunces(m measure, def string) *Error {
	u := q.find(def)
	n := m.parts[0].number
	i := strings.IndexAny(n, ".,")
	if u == nil || !u.bare || u.ratio != 16 || i < 1 || len(n)-i != 3 {
		return nil
	}
	if after := n[i+1:]; after >= "10" && after <= "15" {
		return refuse(Ambiguous, m.text, "%s could be %s lb %s oz or a decimal; write the unit", n, n[:i], after)
	}
	return nil
}
