package gpx

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
)

// Options limit what is read. Zero values mean the defaults.
type Options struct {
	Now       time.Time // to tell times in the future; zero: not told
	MaxBytes  int64     // 1 GiB
	MaxPoints int       // 2,000,000 for Read; no limit for Scan
}

const (
	maxBytes  = 1 << 30
	maxPoints = 2_000_000
	maxDepth  = 64
	maxText   = 4096 // bytes kept of a name or note
	maxLines  = 100_000
)

// Read returns the whole of a file. It is refused with an *Error; where points were
// read before a break, they are returned with a warning instead.
func Read(r io.Reader, o Options) (File, error) {
	if o.MaxPoints == 0 {
		o.MaxPoints = maxPoints
	}
	var f File
	p := parser{o: o, sink: f.take, begin: f.begin, segment: f.segment, title: f.title}
	err := p.run(r)
	f.Head = p.head
	if err != nil {
		return File{}, err
	}
	return f, nil
}

func (f *File) begin(k Kind) { f.Lines = append(f.Lines, Line{Kind: k}) }

func (f *File) segment() {
	l := &f.Lines[len(f.Lines)-1]
	l.Segments = append(l.Segments, nil)
}

func (f *File) title(s string) { f.Lines[len(f.Lines)-1].Name = s }

func (f *File) take(at Part, p Point) error {
	if at.Kind == Waypoint {
		f.Waypoints = append(f.Waypoints, p)
		return nil
	}
	l := &f.Lines[len(f.Lines)-1]
	if len(l.Segments) == 0 { // a point outside of any segment
		l.Segments = append(l.Segments, nil)
	}
	s := &l.Segments[len(l.Segments)-1]
	*s = append(*s, p)
	return nil
}

// Scan hands every usable point to f in the order of the file and returns what the file
// says of itself. An error of f stops it and is returned as it is.
func Scan(r io.Reader, o Options, f func(Part, Point) error) (Head, error) {
	p := parser{o: o, sink: f, begin: func(Kind) {}, segment: func() {}, title: func(string) {}}
	err := p.run(r)
	return p.head, err
}

// run reads to the end.
func (p *parser) run(r io.Reader) error {
	in, err := decoded(r)
	if err != nil {
		return err
	}
	if in.max = p.o.MaxBytes; in.max <= 0 {
		in.max = maxBytes
	}
	p.in, p.dec = in, xml.NewDecoder(in)
	p.dec.CharsetReader = func(_ string, r io.Reader) (io.Reader, error) { return r, nil } // it is UTF-8 by now
	p.at = map[WarningKind]int{}
	if err := p.tokens(); err != nil {
		return err
	}
	p.finish()
	return nil
}

func (p *parser) tokens() error {
	for {
		p.in.token = 0
		tok, err := p.dec.Token()
		if err == io.EOF && p.rooted && p.depth == 0 {
			return nil
		}
		if err != nil {
			return p.broken(err)
		}
		switch t := tok.(type) {
		case xml.StartElement:
			err = p.start(t)
		case xml.EndElement:
			err = p.end()
		case xml.CharData:
			if p.want != nil && len(p.chars) < maxText {
				p.chars = append(p.chars, t[:min(len(t), maxText-len(p.chars))]...)
			}
		case xml.Directive:
			err = p.fail("the file brings a document type of its own, which GPX does not have and which can hide a trap", "Do not use this file unless you know where it comes from; export the track again.")
		}
		if err != nil {
			return err
		}
	}
}

// broken tells a file that breaks off from one that is wrong.
func (p *parser) broken(err error) error {
	if stopped := new(Error); errors.As(p.in.stopped, &stopped) {
		line, _ := p.dec.InputPos()
		return &Error{line, stopped.What, stopped.Do}
	}
	syntax := new(xml.SyntaxError)
	cut := err == io.EOF || errors.As(err, &syntax) && syntax.Msg == "unexpected EOF"
	switch {
	case !p.rooted:
		return p.fail("this is not GPX: no gpx element begins it", "Export the track as GPX and read that.")
	case cut && p.head.Points+p.head.Waypoints > 0:
		p.warn(CutShort, "")
		return nil
	case cut:
		return p.fail("the file breaks off before its first point", "Copy or export it again.")
	case errors.As(err, &syntax):
		return p.fail("the XML is not well formed: "+syntax.Msg, "Export the track again; the file was changed or damaged.")
	}
	return p.fail("the XML cannot be read: "+err.Error(), "Export the track again.")
}

func (p *parser) fail(what, do string) error {
	line, _ := p.dec.InputPos()
	return &Error{line, what, do}
}

func (p *parser) start(e xml.StartElement) error {
	if p.depth++; p.depth > maxDepth {
		return p.fail(fmt.Sprintf("elements are nested more than %d deep", maxDepth), "Check where the file comes from; no track needs that.")
	}
	if p.skip > 0 {
		p.skip++
		p.foreign(e.Name.Space)
		return nil
	}
	if !p.rooted {
		return p.root(e)
	}
	switch e.Name.Local {
	case "extensions", "author", "copyright", "link": // the author has a name too
		p.skip = 1
		return nil
	}
	if e.Name.Space != p.space {
		p.skip = 1
		p.foreign(e.Name.Space)
		return nil
	}
	return p.element(e)
}

func (p *parser) root(e xml.StartElement) error {
	if !strings.EqualFold(e.Name.Local, "gpx") {
		return p.fail(fmt.Sprintf("this is XML but not GPX: it begins with %q", clip(e.Name.Local, 40)), "Export the track as GPX and read that.")
	}
	p.rooted, p.space = true, e.Name.Space
	for _, a := range e.Attr {
		switch a.Name {
		case xml.Name{Local: "version"}:
			p.head.Version = clip(a.Value, 40)
		case xml.Name{Local: "creator"}:
			p.head.Creator = clip(a.Value, 200)
		}
	}
	if v := p.head.Version; v != "1.0" && v != "1.1" {
		p.warn(UnknownVersion, v)
	}
	return nil
}

// foreign notes the namespace of what is passed over.
func (p *parser) foreign(space string) {
	if space == p.space || len(p.head.Extensions) >= 32 || slices.Contains(p.head.Extensions, clip(space, 200)) {
		return
	}
	p.head.Extensions = append(p.head.Extensions, clip(space, 200))
}

// clip shortens a text, never in the middle of a letter.
func clip(s string, n int) string {
	if len(s) <= n {
		return s
	}
	return strings.ToValidUTF8(s[:n], "")
}
