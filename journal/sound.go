package journal

import (
	"math"
	"reflect"
	"strings"
	"time"
	"unicode/utf8"

	"gloamline/journal/units"
)

// MaxText is the longest text a record may hold anywhere, in bytes: some ten
// thousand words, far beyond a note and far below what would slow a night down.
const MaxText = 1 << 16

// sound walks through a record and reports what JSON could not bring back as it
// is: bytes that are no text, numbers that are none, units nobody knows, days
// and places that are not. The field named is the outermost one.
func (c *checker) sound(r Record) { c.walk("", reflect.ValueOf(r)) }

func (c *checker) walk(field string, v reflect.Value) {
	if v.Kind() == reflect.Interface || v.Kind() == reflect.Pointer {
		if !v.IsNil() {
			c.walk(field, v.Elem())
		}
		return
	}
	if !v.CanInterface() {
		return
	}
	if f, ok := v.Interface().(interface{ held() (any, bool) }); ok {
		if x, known := f.held(); known {
			c.walk(field, reflect.ValueOf(x))
		}
		return
	}
	switch x := v.Interface().(type) {
	case time.Time:
		if y := x.UTC().Year(); y < 1 || y > 9999 {
			c.bad(field, "an instant lies between the years 1 and 9999")
		}
		return
	case Date:
		if !x.IsZero() && !x.real() {
			c.bad(field, "%s is not a day of the calendar", x)
		}
		return
	case Place:
		if x.Check() != nil {
			c.bad(field, "a position lies between -90 and 90 degrees north and -180 and 180 east")
		}
		return
	case units.Length:
		c.unit(field, string(x.Unit), x.Unit.Known())
	case units.Weight:
		c.unit(field, string(x.Unit), x.Unit.Known())
	case units.Temperature:
		c.unit(field, string(x.Unit), x.Unit.Known())
	}
	switch v.Kind() {
	case reflect.String:
		switch s := v.String(); {
		case !utf8.ValidString(s):
			c.bad(field, "the text holds bytes that are no text")
		case len(s) > MaxText:
			c.bad(field, "the text is too long: %d bytes, at most %d", len(s), MaxText)
		}
	case reflect.Float64, reflect.Float32:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			c.bad(field, "not a number")
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if !f.IsExported() {
				continue
			}
			name := field
			if tag, _, _ := strings.Cut(f.Tag.Get("json"), ","); field == "" && !f.Anonymous {
				name = tag
			}
			c.walk(name, v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return // identities, thumbnails
		}
		for i := range v.Len() {
			c.walk(field, v.Index(i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			c.walk(field, k)
			c.walk(field, v.MapIndex(k))
		}
	}
}

func (c *checker) unit(field, unit string, known bool) {
	if unit != "" && !known {
		c.bad(field, "%q is not a unit of this journal", unit)
	}
}
