// Package paper writes the pages of a night to files: PDF for print, PNG and SVG
// for screens. The format follows from the ending of the name. A file is there
// whole or not at all, and no file that exists is written over.
package paper

import (
	"bytes"
	"errors"
	"fmt"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"

	"gloamline/ui/draw"
	"gloamline/ui/draw/pdf"
	"gloamline/ui/draw/raster"
	"gloamline/ui/draw/svg"
	"gloamline/ui/scene"
)

// Pixels is the scale of a page as PNG: 2.5 pixels to the dp of 1/96 inch, which
// is 240 to the inch.
const Pixels = 2.5

// ErrFormat says that the name ends in none of the formats.
var ErrFormat = errors.New("the name must end in .pdf, .png or .svg")

// Save writes pages to new files: all into one PDF, else one file a page, the
// second named stem-2.png and so on. It returns the names written.
func Save(path, title string, pages []*draw.List) ([]string, error) {
	ext := strings.ToLower(filepath.Ext(path))
	if ext == ".pdf" {
		return []string{path}, writeNew(path, func(w io.Writer) error { return PDF(w, title, pages) })
	}
	if ext != ".png" && ext != ".svg" {
		return nil, ErrFormat
	}
	stem := strings.TrimSuffix(path, filepath.Ext(path))
	var names []string
	for i, p := range pages {
		name := path
		if i > 0 {
			name = fmt.Sprintf("%s-%d%s", stem, i+1, filepath.Ext(path))
		}
		err := writeNew(name, func(w io.Writer) error {
			if ext == ".svg" {
				return SVG(w, title, p)
			}
			return PNG(w, p, Pixels)
		})
		if err != nil {
			return names, err
		}
		names = append(names, name)
	}
	return names, nil
}

// PDF writes all pages into one document on A4.
func PDF(w io.Writer, title string, pages []*draw.List) error {
	points := make([]*draw.List, len(pages))
	for i, p := range pages {
		points[i] = draw.NewList(pdf.A4)
		draw.Place(points[i], p, scene.PagePoint, draw.Point{})
	}
	return pdf.Write(w, points, pdf.Options{Title: title})
}

// SVG writes one page with the letters it uses.
func SVG(w io.Writer, title string, page *draw.List) error {
	return svg.Write(w, page, svg.Options{Title: title, Fonts: true})
}

// PNG writes one picture at so many pixels to the dp.
func PNG(w io.Writer, page *draw.List, scale float64) error {
	var painter raster.Painter
	return png.Encode(w, painter.Image(page, scale))
}

// writeNew makes the whole content first and opens the file only then.
func writeNew(path string, write func(io.Writer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(b.Bytes())
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err != nil {
		_ = os.Remove(path)
	}
	return err
}
