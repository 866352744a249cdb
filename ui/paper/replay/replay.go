// Package replay writes what is shown to somebody, a night or all nights on a pool, to
// files: pages, one HTML file that plays it step by step in a browser without any network,
// and one GIF.
//
// The file holds all it needs: the frames are SVG pictures drawn by package scene, five
// minutes apart (ten on a long night), the photograph a JPEG, both as data: addresses.
// Its Content-Security-Policy allows nothing else, and only the script and style that
// carry the right hash (W3C CSP Level 3, section 2.3.1). Without script the whole night
// stands there as one picture. The letters of the frames are the browser's own sans.
//
// Everything comes from the scene.Handout it is handed; nothing else of the night is
// known here. Not done: sound, sending.
package replay

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"html/template"
	"io"

	"gloamline/ui/draw"
	"gloamline/ui/draw/svg"
	"gloamline/ui/scene"
	"gloamline/ui/words"
)

//go:embed page.css
var style string

//go:embed page.js
var script string

//go:embed page.html
var page string

var pageTemplate = template.Must(template.New("page").Parse(page))

// FrameSize is a frame in dp: as wide as a phone, so that its letters stay 12 dp there.
var FrameSize = draw.Size{W: 360, H: 420}

// mostFrames is how many a file may have; beyond, the steps are longer.
const mostFrames = 72

// frame is one step: its picture and what it says.
type frame struct {
	Src  string `json:"src"`
	Says string `json:"says"`
}

// Write writes it as one HTML file.
func Write(w io.Writer, c scene.Handout, p words.Prefs) error {
	whole, err := picture(c.Frame(FrameSize, scene.Dusk, scene.ClientWhole, p))
	if err != nil {
		return err
	}
	frames, err := framesOf(c, p)
	if err != nil {
		return err
	}
	data, err := json.Marshal(frames) // escapes <, > and &, so that it cannot end the script
	if err != nil {
		return err
	}
	v := map[string]any{
		"Policy": template.HTMLAttr(`content="default-src 'none'; img-src data:; style-src 'sha256-` + hash(style) + `'; script-src 'sha256-` + hash(script) + `'; base-uri 'none'; form-action 'none'"`),
		"Style":  template.CSS(style), "Script": template.JS(script), "Data": template.JS(data),
		"Said": c.Title(), "Where": c.Where(), "Lines": c.Lines(p), "Notes": c.Remarks(),
		"Whole": template.URL(whole), "Play": words.PlayWord(), "Pause": words.PauseWord(),
		"Time": words.TimeOfNight(), "Night": words.PlayedNight(),
	}
	if all := c.Photos(); len(all) > 0 {
		first := all[0]
		v["Photo"] = template.URL("data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(first.JPEG))
		v["PhotoSays"] = words.FishPhoto(first.Fish)
		f := c.Seen()[first.Fish-1]
		v["Fish"] = f.Said()
		if f.Fly != nil {
			v["Fly"] = f.Fly.Words
		}
	}
	var b bytes.Buffer
	if err := pageTemplate.Execute(&b, v); err != nil {
		return err
	}
	_, err = w.Write(b.Bytes())
	return err
}

func framesOf(c scene.Handout, p words.Prefs) ([]frame, error) {
	var out []frame
	for _, m := range c.Moments(mostFrames) {
		src, err := picture(c.Frame(FrameSize, scene.Dusk, m, p))
		if err != nil {
			return nil, err
		}
		out = append(out, frame{src, c.Says(m, p)})
	}
	return out, nil
}

// picture is a list as the address of an SVG that stands for itself.
func picture(l *draw.List) (string, error) {
	var b bytes.Buffer
	if err := svg.Write(&b, l, svg.Options{}); err != nil {
		return "", err
	}
	return "data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(b.Bytes()), nil
}

func hash(s string) string {
	sum := sha256.Sum256([]byte(s))
	return base64.StdEncoding.EncodeToString(sum[:])
}
