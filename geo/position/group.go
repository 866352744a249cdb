package position

import "fmt"

// group is one of the two numbers, of one to three parts.
type group struct {
	at    int
	axis  axis // 0: not said
	side  item // the letter, if any
	sided bool
	nums  []item
}

// split parts the items into two groups: at the letters or names if there are any, else at
// the one divider, else before the number of the second degree mark, else between two numbers.
func split(items []item) ([2]group, *Error) {
	for len(items) > 0 && items[len(items)-1].kind == divider {
		items = items[:len(items)-1]
	}
	var g [2]group
	cut, err := cutAt(items)
	if err != nil {
		return g, err
	}
	for i, part := range [][]item{items[:cut], items[cut:]} {
		if g[i], err = grouped(part); err != nil {
			return g, err
		}
	}
	return g, nil
}

func cutAt(items []item) (int, *Error) {
	var nums, degs, divs, sides, names []int
	for i, it := range items {
		switch it.kind {
		case number:
			nums = append(nums, i)
		case degreeMark:
			degs = append(degs, i)
		case divider:
			divs = append(divs, i)
		case hemisphere:
			sides = append(sides, i)
		case label:
			names = append(names, i)
		}
	}
	end := 0
	if len(items) > 0 {
		end = items[len(items)-1].at
	}
	switch {
	case len(nums) < 2:
		return 0, &Error{end, "a place needs a latitude and a longitude; there is one number only", example}
	case len(sides) > 2:
		return 0, &Error{items[sides[2]].at, "there are more than two of N, S, E and W", example}
	case len(sides) == 1:
		return 0, &Error{items[sides[0]].at, "one number has its letter, the other not", "Write both with N or S, and E or W."}
	case len(names) == 2:
		if names[0] != 0 {
			return 0, &Error{items[names[0]].at, "the name of a number stands before it", "Write lat 55.1, lon -4.6 for instance."}
		}
		return names[1], nil
	case len(sides) == 2 && sides[0] == 0:
		return sides[1], nil
	case len(sides) == 2:
		return sides[0] + 1, nil
	case len(divs) == 1:
		return divs[0], nil
	case len(degs) == 2:
		return degs[1] - 1, nil
	case len(nums) == 2:
		return nums[1], nil
	}
	return 0, &Error{items[nums[2]].at, fmt.Sprintf("%d numbers without N, S, E or W can be read in more than one way", len(nums)), "Put the letters after each of the two, as in 55 7 24 N, 4 36 4 W."}
}

func grouped(items []item) (group, *Error) {
	var g group
	if len(items) > 0 {
		g.at = items[0].at
	}
	for i, it := range items {
		switch it.kind {
		case number:
			if len(g.nums) == 3 {
				return g, &Error{it.at, "one of the two has more than degrees, minutes and seconds", example}
			}
			if len(g.nums) > 0 && it.signed != 0 {
				return g, &Error{it.at, "a sign stands before minutes or seconds", "Put it before the degrees."}
			}
			if len(g.nums) > 0 && !g.nums[len(g.nums)-1].whole {
				return g, &Error{it.at, "minutes or seconds follow a number with decimals", "Only the last part can have decimals."}
			}
			g.nums = append(g.nums, it)
		case degreeMark, minuteMark, secondMark:
			if i == 0 || items[i-1].kind != number || len(g.nums) != int(it.kind-degreeMark)+1 {
				return g, &Error{it.at, "the mark for degrees, minutes or seconds stands in the wrong place", example}
			}
		case hemisphere:
			if g.sided || g.axis != 0 && g.axis != it.axis {
				return g, &Error{it.at, "the letters or names contradict each other", "Write each number with one letter."}
			}
			g.sided, g.side, g.axis = true, it, it.axis
		case label:
			if g.axis != 0 {
				return g, &Error{it.at, "the letters or names contradict each other", "Write each number with one name."}
			}
			g.axis = it.axis
		}
	}
	if len(g.nums) == 0 {
		return g, &Error{g.at, "one of the two numbers is missing", example}
	}
	return g, nil
}

// degrees returns the value of a group.
func (g group) degrees() (float64, *Error) {
	first := g.nums[0]
	if g.sided && first.signed != 0 {
		return 0, &Error{first.at, "a sign and a letter say the same thing twice, or contradict each other", "Leave one of them out."}
	}
	v, scale := first.value, 60.0
	sign := 1.0
	if first.signed < 0 {
		v, sign = -v, -1
	}
	for _, n := range g.nums[1:] {
		if n.value >= 60 {
			return 0, &Error{n.at, fmt.Sprintf("%s is more than the 59 that minutes and seconds go to", n.text), "Check the number; in decimal degrees write one number only."}
		}
		v += n.value / scale
		scale *= 60
	}
	if g.sided && g.side.south {
		sign = -1
	}
	return sign * v, nil
}
