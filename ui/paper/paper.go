// Package paper writes the pages of a night to files: PDF for print, PNG and SVG
// for screens. The format follows from the ending of the name. What is asked for is
// there whole or not at all, and no file that exists is written over.
//
// A page is given in dp of 1/96 inch, as package scene draws it, and is A4 in every
// format. Pages are made in memory before the first file is opened: some megabytes
// each as PNG, less otherwise. Not done: a file cut short by a loss of power is not
// told from a whole one; a page can be drawn again from its night.
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

// Errors of Save, besides those of the file system.
var (
	ErrFormat  = errors.New("the name must end in .pdf, .png or .svg")
	ErrNothing = errors.New("there is no page to write")
)

// Takes reports whether the name ends in one of the formats, large or small.
func Takes(path string) bool {
	switch ending(path) {
	case ".pdf", ".png", ".svg":
		return true
	}
	return false
}

func ending(path string) string { return strings.ToLower(filepath.Ext(path)) }

// File is one that is made but not yet written.
type File struct {
	Name    string
	Content []byte
}

// Save writes pages to new files: all into one PDF, else one file a page, the
// second named stem-2.png and so on. It returns the names written. If one of them
// cannot be written, none is left and the error names it: fs.ErrExist where a file
// stands already, fs.ErrNotExist where its folder is missing.
func Save(path, title string, pages []*draw.List) ([]string, error) {
	sheets, err := render(path, title, pages)
	if err != nil {
		return nil, err
	}
	return SaveFiles(sheets)
}

// SaveFiles writes new files, all or none, and returns their names. The error is as
// that of Save.
func SaveFiles(files []File) ([]string, error) {
	var names []string
	for _, f := range files {
		if err := writeNew(f); err != nil {
			for _, n := range names { // ours, from a moment ago
				err = errors.Join(err, os.Remove(n))
			}
			return nil, err
		}
		names = append(names, f.Name)
	}
	return names, nil
}

// render makes every file in memory.
func render(path, title string, pages []*draw.List) ([]File, error) {
	if !Takes(path) {
		return nil, ErrFormat
	}
	if len(pages) == 0 {
		return nil, ErrNothing
	}
	ext := ending(path)
	if ext == ".pdf" {
		var b bytes.Buffer
		err := PDF(&b, title, pages)
		return []File{{path, b.Bytes()}}, err
	}
	stem := strings.TrimSuffix(path, filepath.Ext(path))
	var out []File
	for i, p := range pages {
		name := path
		if i > 0 {
			name = fmt.Sprintf("%s-%d%s", stem, i+1, filepath.Ext(path))
		}
		var b bytes.Buffer
		write := func() error { return PNG(&b, p, Pixels) }
		if ext == ".svg" {
			write = func() error { return SVG(&b, title, p) }
		}
		if err := write(); err != nil {
			return nil, err
		}
		out = append(out, File{name, b.Bytes()})
	}
	return out, nil
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

// writeNew writes a file where there was none, and removes it if it cannot be whole.
func writeNew(s File) error {
	f, err := os.OpenFile(s.Name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(s.Content)
	err = errors.Join(err, f.Close())
	if err != nil {
		err = errors.Join(err, os.Remove(s.Name))
	}
	return err
}
