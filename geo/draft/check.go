package draft

import (
	"fmt"

	"gloamline/geo"
	"gloamline/journal/units"
)

// Finding is something wrong with what is drawn, two lines and the place on the plane.
type Finding struct {
	Of    geo.ID
	At    geo.Point
	Fault geo.FaultKind // of geo.Check; "" for what only drawing looks at
	What  string
	Do    string
	Gates bool // light or position cannot be worked out with it
}

// Findings lists what is wrong, worst not first but as drawn. The draft is kept whatever stands
// here.
func (d Draft) Findings() []Finding {
	var out []Finding
	for _, f := range geo.Check(d.Beat) {
		x := Finding{Of: f.ID, Fault: f.Kind, What: f.Error(), Do: remedy(f.Kind), Gates: f.Serious()}
		if !f.At.IsZero() {
			x.At = d.Plane.At(f.At)
		}
		out = append(out, x)
	}
	if !d.hasPools() {
		out = append(out, Finding{Of: d.Beat.ID, What: "no pool is drawn yet", Do: "Draw round the first one.", Gates: true})
	}
	l := d.Beat.LayoutOn(d.Plane)
	out = append(out, offRiver(l)...)
	return append(out, overlaps(l)...)
}

// Usable reports whether nights can be written and set in their light on this beat.
func (d Draft) Usable() bool {
	for _, f := range d.Findings() {
		if f.Gates {
			return false
		}
	}
	return true
}

func remedy(k geo.FaultKind) string {
	switch k {
	case geo.NoPlace:
		return "Give its latitude and longitude."
	case geo.NoZone, geo.UnknownZone:
		return "Choose the zone of its clocks."
	case geo.BadPosition:
		return "Check latitude and longitude; latitude comes first."
	case geo.NoName, geo.SameName:
		return "Give it a name of its own."
	case geo.SameOrder, geo.NegativeNumber, geo.OrderUpstream:
		return "Put the pools in fishing order, from the top down."
	case geo.TooFewCorners:
		return "Add a corner, or remove the pool."
	case geo.CrossesItself:
		return "Move a corner near that place, or undo."
	case geo.OutsideBeat:
		return "Move the pool to the river, or the bank lines to the pool."
	case geo.BadSkyline:
		return "Correct that point of the skyline."
	case geo.BadBank, geo.NoBankSide:
		return "Choose the true left or the true right, looking downstream."
	case geo.BadCanopy:
		return "Choose open, partly or closed."
	case geo.HeadBelowTail:
		return "Mark head and tail the other way round."
	case geo.NothingDrawn:
		return "Draw it, or remove it."
	}
	return "Remove it and draw it again."
}

// bankSlack is how far an edge may reach over a bank line before it counts as on land:
// both are drawn by hand.
const bankSlack units.Metres = 5

// offRiver finds pools of which a tenth or more lies on land, where both banks are drawn.
func offRiver(l *geo.Layout) []Finding {
	var left, right geo.Path
	for _, e := range l.Banks {
		switch {
		case e.Bank == geo.TrueLeft && e.Path.Length() > left.Length():
			left = e.Path
		case e.Bank == geo.TrueRight && e.Path.Length() > right.Length():
			right = e.Path
		}
	}
	if len(left) < 2 || len(right) < 2 {
		return nil
	}
	water := append(append(geo.Path{}, left...), right.Reversed()...)
	river := geo.Area{append(water, water[0])}
	var out []Finding
	for _, s := range l.Pools {
		edge, dry := s.Area[0].Even(101)[:100], 0
		var worst geo.Foot
		var at geo.Point
		for _, p := range edge {
			if f := river.Edge(p); !river.Holds(p) && f.Distance > bankSlack {
				if dry++; f.Distance > worst.Distance {
					worst, at = f, p
				}
			}
		}
		if dry >= 10 {
			out = append(out, Finding{Of: s.Pool.ID, At: at, What: fmt.Sprintf("%s reaches %.0f m over the bank line", name(s.Pool), float64(worst.Distance)), Do: "Move its outline into the river, or the bank line out."})
		}
	}
	return out
}

func name(p geo.Pool) string {
	if p.Name == "" {
		return "a pool without a name"
	}
	return p.Name
}

// lap is how deep one pool may reach into another: edges drawn along each other by hand.
const lap units.Metres = 0.5

// overlaps finds pools that lie on one another.
func overlaps(l *geo.Layout) []Finding {
	var out []Finding
	for i := range l.Pools {
		for j := range l.Pools[:i] {
			a, b := l.Pools[j], l.Pools[i]
			if at, deep := reaches(a.Area, b.Area); deep {
				out = append(out, Finding{Of: b.Pool.ID, At: at, What: fmt.Sprintf("%s and %s lie on one another", name(a.Pool), name(b.Pool)), Do: "Draw their edges apart, or join the two."})
			}
		}
	}
	return out
}

func reaches(a, b geo.Area) (geo.Point, bool) {
	for _, pair := range [2][2]geo.Area{{a, b}, {b, a}} {
		one, two := pair[0], pair[1]
		points := append(one[0].Even(max(33, min(400, int(one[0].Length()/2)))), one[0]...)
		if c := one.Centroid(); one.Holds(c) {
			points = append(points, c)
		}
		for _, p := range points {
			if two.Holds(p) && two.Edge(p).Distance > lap {
				return p, true
			}
		}
	}
	return geo.Point{}, false
}
