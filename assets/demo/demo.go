package demo

import (
	"bytes"
	"embed"
	"fmt"
	"math/rand/v2"

	"gloamline/geo"
	"gloamline/geo/sketch"
	"gloamline/journal"
)

//go:embed home.geojson kirk.geojson
var files embed.FS

// Seed is the seed of the journal that ships.
const Seed = 20260704

// Nights is how many nights each season has.
const Nights = 24

// maker holds what the generator has made so far.
type maker struct {
	j      *journal.Journal
	r      *rand.Rand
	apart  *rand.Rand // for what came to the demo later
	home   journal.Beat
	kirk   journal.Beat
	people map[string]journal.Person
	flies  map[string]journal.Fly
	// layouts has the beats laid out, to say where on the sketch a fish took.
	layouts map[journal.ID]*geo.Layout
}

// Write fills an empty journal with the demo. Any error comes from the journal:
// then what was written so far stays, and undo takes it back.
func Write(j *journal.Journal, seed uint64) error {
	m := &maker{j: j, r: rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15)), apart: rand.New(rand.NewPCG(seed, 0x2545f4914f6cdd1d)), people: map[string]journal.Person{}, flies: map[string]journal.Fly{}, layouts: map[journal.ID]*geo.Layout{}}
	var err error
	if m.home, err = m.beat("home.geojson"); err != nil {
		return err
	}
	if m.kirk, err = m.beat("kirk.geojson"); err != nil {
		return err
	}
	b := journal.Batch{Put: []journal.Record{m.home, m.kirk}}
	b.Put = append(b.Put, m.makePeople()...)
	b.Put = append(b.Put, m.makeFlies()...)
	b.Put = append(b.Put, m.makeRules()...)
	if _, err := j.Do("set up demo", b); err != nil {
		return err
	}
	for _, year := range []int{2025, 2026} {
		if err := m.season(year); err != nil {
			return err
		}
	}
	return nil
}

func (m *maker) id() journal.ID {
	var id journal.ID
	for i := range id {
		id[i] = byte(m.r.UintN(256))
	}
	return id
}

func (m *maker) beat(name string) (journal.Beat, error) {
	b, err := files.ReadFile(name)
	if err != nil {
		return journal.Beat{}, err
	}
	shape, warnings, err := sketch.Read(bytes.NewReader(b))
	if err != nil {
		return journal.Beat{}, err
	}
	if len(warnings) > 0 {
		return journal.Beat{}, fmt.Errorf("%s: %v", name, warnings)
	}
	m.layouts[shape.ID] = shape.Layout()
	return journal.Beat{ID: shape.ID, Revisions: []journal.BeatRevision{{Shape: shape}}}, nil
}

// pool finds a pool of the beat by name.
func pool(b journal.Beat, name string) geo.Pool {
	for _, p := range b.Revisions[0].Shape.Pools {
		if p.Name == name {
			return p
		}
	}
	panic("the demo names a pool that its beat lacks: " + name) // a slip in this package; its tests run every call
}
