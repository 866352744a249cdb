package pdf

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"
	"unicode"

	"codeberg.org/go-pdf/fpdf"

	"gloamline/ui/draw"
)

// Options says what the document tells about itself.
type Options struct {
	Title    string
	Author   string
	Subject  string
	Keywords string
	Created  time.Time // written as date of creation and change; nought means 1 January 1970
}

// A4 is the paper used here, upright, in dp.
var A4 = draw.Size{W: 595.28, H: 841.89}

// sides that PDF readers take, in points (ISO 32000-1, annex C: 3 to 14400).
const shortest, longest = 3, 14400

// ErrNoPage is what Write returns when there is nothing to write.
var ErrNoPage = errors.New("pdf: no page")

// Write writes one page for each list.
func Write(w io.Writer, pages []*draw.List, o Options) error {
	pages = slices.DeleteFunc(slices.Clone(pages), func(l *draw.List) bool { return l == nil })
	if len(pages) == 0 {
		return ErrNoPage
	}
	created := o.Created
	if created.IsZero() {
		created = time.Unix(0, 0)
	}
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: paper(pages[0])})
	f.SetCatalogSort(true)
	f.SetCreationDate(created.UTC())
	f.SetModificationDate(created.UTC())
	f.SetProducer("Gloamline", true)
	f.SetCreator("Gloamline", true)
	f.SetTitle(plain(o.Title), true)
	f.SetAuthor(plain(o.Author), true)
	f.SetSubject(plain(o.Subject), true)
	f.SetKeywords(plain(o.Keywords), true)
	f.SetLang("en-GB")
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	p := &page{f: f, widths: map[int]bool{}, names: map[string]string{}}
	for w, used := range weights(pages) {
		if used {
			f.AddUTF8FontFromBytes(family(draw.Weight(w)), "", slices.Clone(draw.Weight(w).TTF()))
		}
	}
	for _, l := range pages {
		size := paper(l)
		f.AddPageFormat("P", size)
		f.RawWriteStr(num(draw.MiterLimit) + " M")
		p.size, p.width, p.height = l.Size(), size.Wd, size.Ht
		p.now, p.saved = state{}, p.saved[:0]
		l.Replay(p)
		if p.err != nil {
			return fmt.Errorf("pdf: %w", p.err)
		}
	}
	if err := f.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

func paper(l *draw.List) fpdf.SizeType {
	side := func(v float64) float64 { return math.Max(shortest, math.Min(v, longest)) }
	return fpdf.SizeType{Wd: side(l.Size().W), Ht: side(l.Size().H)}
}

// weights tells which cuts of the typeface the pages use.
func weights(pages []*draw.List) (used [draw.Bold + 1]bool) {
	for _, l := range pages {
		for i := range l.Len() {
			if o := l.Op(i); o.Kind == draw.TextOp {
				used[min(o.Text.Font.Weight, draw.Bold)] = true
			}
		}
	}
	return used
}

func family(w draw.Weight) string { return "gloamline" + w.String() }

// plain is text fit for the document's own particulars.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r > 0xffff {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}
