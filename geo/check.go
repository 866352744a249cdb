package geo

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/paulmach/orb"
)

// Check returns everything wrong with a beat, the beat itself first, then pools and
// features as kept; nil when nothing is. Zone names are looked up in the system's or
// the program's own copy of the zone database.
func Check(b Beat) []Fault {
	c := &checking{ids: map[ID]string{}}
	c.beat(b)
	for i, p := range b.Pools {
		c.pool(p, nameOf(p.Name, RolePool, i))
	}
	for i, f := range b.Features {
		c.feature(f, nameOf(f.Name, f.Role, i))
	}
	if !c.badPosition { // a plane needs places on the earth
		c.together(b)
		c.direction(b)
	}
	return c.faults
}

type checking struct {
	faults      []Fault
	ids         map[ID]string
	names       map[string]bool
	orders      map[int]string
	badPosition bool
}

func (c *checking) add(f Fault) { c.faults = append(c.faults, f) }

func nameOf(name string, role Role, i int) string {
	switch {
	case strings.TrimSpace(name) != "":
		return name
	case role == "":
		return fmt.Sprintf("feature %d", i+1)
	}
	return fmt.Sprintf("%s %d", role, i+1)
}

func (c *checking) beat(b Beat) {
	what := nameOf(b.Name, "beat", 0)
	if b.Name == "" {
		what = "the beat"
	}
	c.id(b.ID, what)
	if b.Place().IsZero() {
		c.add(Fault{Kind: NoPlace, What: what})
	}
	c.place(b.At, b.ID, what)
	switch _, err := time.LoadLocation(b.Zone); {
	case b.Zone == "":
		c.add(Fault{Kind: NoZone, What: what})
	case err != nil || b.Zone == "Local":
		c.add(Fault{Kind: UnknownZone, What: what, Value: b.Zone})
	}
}

func (c *checking) id(id ID, what string) {
	if id.IsZero() {
		c.add(Fault{Kind: NoID, What: what})
		return
	}
	if other, ok := c.ids[id]; ok {
		c.add(Fault{Kind: SameID, ID: id, What: what, Other: other})
		return
	}
	c.ids[id] = what
}

func (c *checking) place(p Place, id ID, what string) {
	if p.Check() != nil {
		c.badPosition = true
		c.add(Fault{Kind: BadPosition, ID: id, What: what, Value: fmt.Sprintf("latitude %v, longitude %v", float64(p.Lat), float64(p.Lon))})
	}
}

// positions reports the first bad position only: a file in another grid has them all.
func (c *checking) positions(id ID, what string, each func(func(orb.Point))) {
	found := false
	each(func(p orb.Point) {
		if !found && PlaceOf(p).Check() != nil {
			found = true
			c.place(PlaceOf(p), id, what)
		}
	})
}

func (c *checking) pool(p Pool, what string) {
	c.id(p.ID, what)
	if c.names == nil {
		c.names, c.orders = map[string]bool{}, map[int]string{}
	}
	key := strings.ToLower(strings.Join(strings.Fields(p.Name), " "))
	switch {
	case key == "":
		c.add(Fault{Kind: NoName, ID: p.ID, What: what, At: p.Place()})
	case c.names[key]:
		c.add(Fault{Kind: SameName, ID: p.ID, What: what, Other: what, At: p.Place()})
	}
	c.names[key] = true
	number := strconv.Itoa(p.Order)
	switch other, taken := c.orders[p.Order]; {
	case p.Order < 0:
		c.add(Fault{Kind: NegativeNumber, ID: p.ID, What: what, Value: number})
	case p.Order > 0 && taken:
		c.add(Fault{Kind: SameOrder, ID: p.ID, What: what, Other: other, Value: number, At: p.Place()})
	default:
		c.orders[p.Order] = what
	}
	if err := p.Skyline.Check(); err != nil {
		c.add(Fault{Kind: BadSkyline, ID: p.ID, What: what, Value: err.Error()})
	}
	c.canopy(p.Canopy, p.ID, what)
	c.bank(p.Bank, p.ID, what)
	c.positions(p.ID, what, func(f func(orb.Point)) {
		eachOf(p.Outline, f)
		f(p.Head.LonLat())
		f(p.Tail.LonLat())
	})
	c.outline(p, what)
}

func (c *checking) canopy(v Canopy, id ID, what string) {
	if v != "" && !v.Known() {
		c.add(Fault{Kind: BadCanopy, ID: id, What: what, Value: string(v)})
	}
}

func (c *checking) bank(b Bank, id ID, what string) {
	if b != "" && !b.Known() {
		c.add(Fault{Kind: BadBank, ID: id, What: what, Value: string(b)})
	}
}

// outline checks every ring of a pool by itself.
func (c *checking) outline(p Pool, what string) {
	if len(p.Outline) == 0 || c.badPosition {
		return
	}
	plane := NewPlane(PlaceOf(firstOf(p.Outline)))
	for _, ring := range p.Outline {
		path := plane.Path(ring)
		if m2, _ := path.signedM2(); len(path) < 4 || path[0] != path[len(path)-1] || m2 == 0 {
			c.add(Fault{Kind: TooFewCorners, ID: p.ID, What: what, At: PlaceOf(firstOf(p.Outline))})
			return
		}
		if at, crossed := path.Crossing(); crossed {
			c.add(Fault{Kind: CrossesItself, ID: p.ID, What: what, At: plane.Place(at)})
			return
		}
	}
}

func firstOf(a orb.Polygon) orb.Point {
	for _, r := range a {
		if len(r) > 0 {
			return r[0]
		}
	}
	return orb.Point{}
}

func (c *checking) feature(f Feature, what string) {
	c.id(f.ID, what)
	c.bank(f.Bank, f.ID, what)
	c.canopy(f.Canopy, f.ID, what)
	if f.Role == RoleBank && f.Bank == "" {
		c.add(Fault{Kind: NoBankSide, ID: f.ID, What: what})
	}
	if f.Role.Known() && f.Shape.IsZero() {
		c.add(Fault{Kind: NothingDrawn, ID: f.ID, What: what})
	}
	c.positions(f.ID, what, f.Shape.each)
}
