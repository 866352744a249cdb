package journal

import (
	"errors"
	"fmt"
	"slices"
	"unicode/utf8"
)

// checker collects everything wrong with a record, so that a form can mark
// every field at once.
type checker struct {
	ref  Ref
	errs []error
}

func (c *checker) add(err error) {
	var e *Error
	if errors.As(err, &e) && e.ID.IsZero() {
		e.ID = c.ref.ID
	}
	c.errs = append(c.errs, err)
}

func (c *checker) bad(field, format string, a ...any) {
	c.add(&Error{Kind: Invalid, Field: field, ID: c.ref.ID, Err: fmt.Errorf(format, a...)})
}

func (c *checker) id(id ID) {
	if id.IsZero() {
		c.bad("id", "a record needs an identity")
	}
}

// head checks what every entry has; rodded entries belong to one rod.
func (c *checker) head(h Head, rodded bool) {
	c.id(h.ID)
	if h.Trip.IsZero() {
		c.bad("trip", "an entry belongs to a night")
	}
	if rodded && h.Rod.IsZero() {
		c.bad("rod", "say whose rod it was")
	}
	c.when("when", h.When)
	if !utf8.ValidString(h.Note) {
		c.bad("note", "the note holds bytes that are no text")
	}
	oneOf(c, "from", h.From.How, Hows)
}

func (c *checker) when(field string, w When) {
	if !slices.Contains(WhenKinds, w.Kind) {
		c.bad(field, "say when it was, even roughly")
		return
	}
	anchors := len(w.Anchors)
	bounded := !w.Lo.IsZero() && !w.Hi.IsZero()
	switch {
	case anchors == 0 && !bounded:
		c.bad(field, "say when it was, even roughly")
	case bounded && w.Hi.Before(w.Lo):
		c.bad(field, "the later time comes before the earlier one")
	case w.Kind == ExactTime && !w.Lo.Equal(w.Hi):
		c.bad(field, "an exact time is one moment")
	case (w.Kind == WithinTime || w.Kind == BeforeTime || w.Kind == AfterTime) && anchors != 1,
		w.Kind == BetweenTime && anchors != 0 && anchors != 2,
		(w.Kind == ExactTime || w.Kind == AboutTime) && anchors != 0:
		c.bad(field, "a time %s hangs on the wrong number of entries: %d", w.Kind, anchors)
	}
	if slices.Contains(w.Anchors, c.ref.ID) {
		c.bad(field, "a time cannot hang on its own entry")
	}
}

func (c *checker) bank(f Field[Bank]) {
	if b, ok := f.Get(); ok && b != "left" && b != "right" {
		c.bad("bank", "a bank is the true left or the true right")
	}
}

func (c *checker) place(field string, f Field[Place]) {
	if p, ok := f.Get(); ok && p.Check() != nil {
		c.bad(field, "a position lies between -90 and 90 degrees north and -180 and 180 east")
	}
}

func oneOf[T ~string](c *checker, field string, v T, list []T) {
	if !slices.Contains(list, v) {
		c.bad(field, "%q is none of %q", v, list)
	}
}

func fieldOneOf[T ~string](c *checker, field string, f Field[T], list []T) {
	if v, ok := f.Get(); ok {
		oneOf(c, field, v, list)
	}
}

// Check reports everything wrong with a record by itself, joined; nil if
// nothing is. Each part is an *Error of kind Invalid with its field.
func Check(r Record) error {
	c := &checker{ref: r.Ref()}
	r.check(c)
	return errors.Join(c.errs...)
}

// FieldErrors takes apart what Check and the Journal return.
func FieldErrors(err error) []*Error {
	var out []*Error
	var walk func(error)
	walk = func(err error) {
		if err == nil {
			return
		}
		if e, ok := err.(*Error); ok {
			if inner := FieldErrors(e.Err); len(inner) > 0 {
				out = append(out, inner...)
				return
			}
			out = append(out, e)
			return
		}
		switch u := err.(type) {
		case interface{ Unwrap() []error }:
			for _, e := range u.Unwrap() {
				walk(e)
			}
		case interface{ Unwrap() error }:
			walk(u.Unwrap())
		}
	}
	walk(err)
	return out
}
