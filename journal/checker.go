package journal

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"
	"strings"

	"gloamline/geo"
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
	oneOf(c, "from", h.From.How, Hows)
	for i, w := range h.Warnings {
		oneOf(c, "warnings", w, Warnings)
		if slices.Contains(h.Warnings[:i], w) {
			c.bad("warnings", "the warning %q stands twice", w)
		}
	}
}

func (c *checker) when(field string, w When) {
	if why := w.fault(c.ref.ID); why != "" {
		c.bad(field, "%s", why)
	}
}

// ends checks the end of what began at from, as far as that can be said
// without the entries they hang on.
func (c *checker) ends(field string, from When, until Field[When]) {
	u, ok := until.Get()
	if !ok {
		return
	}
	c.when(field, u)
	if len(u.Anchors) == 0 && len(from.Anchors) == 0 && u.Hi.Before(from.Lo) {
		c.bad(field, "it ends before it begins")
	}
}

// fault says what is wrong with a moment of the entry own, "" if nothing.
func (w When) fault(own ID) string {
	anchors := len(w.Anchors)
	wanted := map[WhenKind][]int{
		ExactTime: {0}, AboutTime: {0}, BetweenTime: {0, 2}, WithinTime: {1}, BeforeTime: {1}, AfterTime: {1},
	}[w.Kind]
	switch {
	case wanted == nil, anchors == 0 && w.Lo.IsZero() && w.Hi.IsZero():
		return "say when it was, even roughly"
	case !slices.Contains(wanted, anchors):
		return fmt.Sprintf("a time %s hangs on the wrong number of entries: %d", w.Kind, anchors)
	case w.Lo.IsZero() != w.Hi.IsZero():
		return "a time needs both its bounds"
	case w.Hi.Before(w.Lo):
		return "the later time comes before the earlier one"
	case w.Kind == ExactTime && !w.Lo.Equal(w.Hi):
		return "an exact time is one moment"
	case slices.Contains(w.Anchors, own):
		return "a time cannot hang on its own entry"
	case slices.Contains(w.Anchors, ID{}):
		return "a time hangs on an entry without identity"
	case anchors == 2 && w.Anchors[0] == w.Anchors[1]:
		return "a time lies between two different entries"
	}
	return ""
}

// sha256 checks the name of a file by its content.
func (c *checker) sha256(s string) {
	b, err := hex.DecodeString(s)
	if err != nil || len(b) != sha256.Size || s != hex.EncodeToString(b) {
		c.bad("sha256", "a file is known by its SHA-256, 64 hexadecimal digits in lower case")
	}
}

// named refuses a text that shows nothing.
func (c *checker) named(field, s, why string) {
	if strings.TrimSpace(s) == "" {
		c.bad(field, "%s", why)
	}
}

func (c *checker) bank(f Field[Bank]) {
	if b, ok := f.Get(); ok && b != geo.TrueLeft && b != geo.TrueRight {
		c.bad("bank", "a bank is the true left or the true right")
	}
}

func oneOf[T ~string](c *checker, field string, v T, list []T) {
	if slices.Contains(list, v) {
		return
	}
	var known []string
	for _, k := range list {
		if k != "" {
			known = append(known, string(k))
		}
	}
	if v == "" {
		c.bad(field, "choose one of: %s", strings.Join(known, ", "))
		return
	}
	c.bad(field, "“%s” is none of: %s", v, strings.Join(known, ", "))
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
	c.sound(r)
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
