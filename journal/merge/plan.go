package merge

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"time"

	"gloamline/journal"
)

// Choice is how a conflict is settled.
type Choice string

const (
	Ours   Choice = "ours"   // as it stands here
	Theirs Choice = "theirs" // as it stands in the other copy
	Both   Choice = "both"   // with the changes of both
)

// Conflict is a record that both copies changed, each by itself.
type Conflict struct {
	Ref          journal.Ref
	Base         *journal.Envelope // as both had it last; nil if not known
	Ours, Theirs journal.Envelope  // either may be removed (Gone)
	OursAt       time.Time         // when each side changed it last
	TheirsAt     time.Time
	Members      []string          // those on which the sides differ; none if one side removed it
	Joined       *journal.Envelope // the changes of both; nil if they touch the same members
	Default      Choice
	Choice       Choice // Default until somebody chooses
}

// Update is a record that only the other copy changed.
type Update struct{ Before, After journal.Envelope }

// Revival is a record that one side removed and the other needs: it stands again.
type Revival struct {
	Ref journal.Ref
	By  journal.Ref // what refers to it
}

// Alike are two records, one on each side, that may mean one thing.
type Alike struct {
	Kind         journal.Kind
	Ours, Theirs journal.ID
	Name         string
}

// Plan is what a merge would do. Nothing is changed until Accept.
type Plan struct {
	Other     journal.ID         // the other copy
	Added     []journal.Envelope // only there
	Updated   []Update           // changed there only
	Removed   []journal.Envelope // as they stand here; removed there only
	Conflicts []Conflict
	Revived   []Revival // by the choices as they stand
	Alike     []Alike
	Ahead     int // records that this copy has and the other lacks, or has in an earlier version

	ours, theirs *copyOf
	lines        map[journal.Ref][2]*line // ours, theirs, of records that differ
	tombs        []journal.Ref            // removed there, never known here
}

// Empty reports whether there is nothing to take over and nothing to decide.
func (p *Plan) Empty() bool { return len(p.settled().edits) == 0 }

// Look compares two copies and says what a merge of theirs into ours would do. Both
// are only read. A record of a later version that would be taken over is Newer: the
// program has to be brought up to date first.
func Look(ours, theirs journal.Store) (*Plan, error) {
	p := &Plan{Other: theirs.Copy(), lines: map[journal.Ref][2]*line{}}
	var err error
	if p.ours, err = readCopy(ours); err != nil {
		return nil, err
	}
	if p.theirs, err = readCopy(theirs); err != nil {
		return nil, err
	}
	refs := map[journal.Ref]bool{}
	for r, b := range p.theirs.stands {
		if a, ok := p.ours.stands[r]; !ok || !same(&a, &b) {
			refs[r] = true
		}
	}
	for r := range p.ours.stands {
		if _, ok := p.theirs.stands[r]; !ok {
			p.Ahead++
		}
	}
	mine, err := p.ours.lines(refs)
	if err != nil {
		return nil, err
	}
	yours, err := p.theirs.lines(refs)
	if err != nil {
		return nil, err
	}
	for _, r := range slices.SortedFunc(maps.Keys(refs), byPlace) {
		p.lines[r] = [2]*line{mine[r], yours[r]}
		if err := p.decide(r, mine[r], yours[r]); err != nil {
			return nil, err
		}
	}
	p.alike()
	p.Revived = p.settled().revived
	return p, nil
}

func byPlace(a, b journal.Ref) int {
	return cmp.Or(bytes.Compare(a.Trip[:], b.Trip[:]), strings.Compare(string(a.Kind), string(b.Kind)), bytes.Compare(a.ID[:], b.ID[:]))
}

// decide files one record on which the copies differ.
func (p *Plan) decide(r journal.Ref, ours, theirs *line) error {
	switch p.ahead(ours, theirs) {
	case Ours:
		p.Ahead++
		return nil
	case Theirs:
		if !theirs.now.Gone {
			if _, err := journal.Unseal(*theirs.now); err != nil {
				return err
			}
		}
		standing := ours.now != nil && !ours.now.Gone
		switch {
		case theirs.now.Gone && standing:
			p.Removed = append(p.Removed, *ours.now)
		case theirs.now.Gone:
			p.tombs = append(p.tombs, r)
		case standing:
			p.Updated = append(p.Updated, Update{*ours.now, *theirs.now})
		default:
			p.Added = append(p.Added, *theirs.now)
		}
		return nil
	}
	var hold [2]any
	for i, e := range []*journal.Envelope{ours.now, theirs.now} {
		if e.Gone {
			continue
		}
		var err error
		if hold[i], err = journal.Unseal(*e); err != nil {
			return err
		}
	}
	if hold[0] != nil && reflect.DeepEqual(hold[0], hold[1]) { // written alike, by an earlier and a later program
		if theirs.now.Version > ours.now.Version {
			p.Updated = append(p.Updated, Update{*ours.now, *theirs.now})
		} else {
			p.Ahead++
		}
		return nil
	}
	mine, yours := ours.beyond(theirs.of), theirs.beyond(ours.of)
	base := base(ours, theirs)
	c := Conflict{Ref: r, Base: base, Ours: *ours.now, Theirs: *theirs.now,
		OursAt: last(mine), TheirsAt: last(yours), Joined: joined(base, ours.now, theirs.now)}
	a, okA := members(&c.Ours)
	b, okB := members(&c.Theirs)
	if okA && okB {
		c.Members = differ(a, b)
	}
	c.Default = c.preferred()
	c.Choice = c.Default
	p.Conflicts = append(p.Conflicts, c)
	return nil
}

// ahead says which side's version of a record follows on the other's, none ("") if
// neither does.
func (p *Plan) ahead(ours, theirs *line) Choice {
	switch {
	case theirs.now == nil:
		return Ours
	case ours.now == nil:
		return Theirs
	case len(theirs.beyond(p.ours)) == 0:
		return Ours
	case len(ours.beyond(p.theirs)) == 0:
		return Theirs
	}
	a, b := ours.knows(theirs.now), theirs.knows(ours.now)
	switch here, there := ours.changed(p.theirs), theirs.changed(p.ours); {
	case here && !there: // there it was changed and changed back
		return Ours
	case there && !here:
		return Theirs
	case a && !b:
		return Ours
	case b && !a:
		return Theirs
	}
	return ""
}

// preferred is the choice that loses least, the same from either side.
func (c Conflict) preferred() Choice {
	switch {
	case c.Joined != nil:
		return Both
	case c.Theirs.Gone:
		return Ours
	case c.Ours.Gone:
		return Theirs
	}
	if d := cmp.Or(c.OursAt.Compare(c.TheirsAt), bytes.Compare(c.Ours.Body, c.Theirs.Body)); d > 0 {
		return Ours
	}
	return Theirs
}

// Choose settles a conflict in another way than by default.
func (p *Plan) Choose(r journal.Ref, choice Choice) error {
	i := slices.IndexFunc(p.Conflicts, func(c Conflict) bool { return c.Ref == r })
	if i < 0 {
		return &journal.Error{Op: Code, Kind: journal.NotFound, ID: r.ID, Err: errors.New("no conflict about that record")}
	}
	c := &p.Conflicts[i]
	if choice != Ours && choice != Theirs && (choice != Both || c.Joined == nil) {
		return &journal.Error{Op: Code, Kind: journal.Invalid, ID: r.ID, Err: fmt.Errorf("it cannot be settled by %q", choice)}
	}
	c.Choice = choice
	p.Revived = p.settled().revived
	return nil
}

// Accept carries the plan out in this copy as one change, which Undo takes back
// whole. The journal must be that of Look and unchanged since: else the error is of
// kind Conflict. A plan that changes nothing returns a zero Change.
func (p *Plan) Accept(j *journal.Journal) (journal.Change, error) {
	s := p.settled()
	return j.Adopt(journal.Change{Did: Code, Edits: s.edits, Aside: s.aside, Seen: p.theirs.beyondAll(p.ours)})
}

// Nights lists the nights that the plan touches: after Accept, what they
// contradict can be asked of journal.NightFaults.
func (p *Plan) Nights() []journal.ID {
	seen := map[journal.ID]bool{}
	for _, e := range p.settled().edits {
		switch r := e.Ref(); {
		case !r.Trip.IsZero():
			seen[r.Trip] = true
		case r.Kind == journal.KindTrip:
			seen[r.ID] = true
		}
	}
	return slices.SortedFunc(maps.Keys(seen), func(a, b journal.ID) int { return bytes.Compare(a[:], b[:]) })
}
