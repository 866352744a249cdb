package scene_test

import (
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"gloamline/assets/demo"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/draw/inspect"
	"gloamline/ui/draw/raster"
	"gloamline/ui/scene"
)

var visionDir = flag.String("vision", "", "folder for pictures of the night as others see it")

// TestDrawVisions draws the scenes of the night in the three looks, as seen with
// common sight, without one kind of cone, and in grey. It draws only when given a
// folder (make vision); the numbers are tested by TestCodesDifferByMoreThanHue.
func TestDrawVisions(t *testing.T) {
	if *visionDir == "" {
		t.Skip("no folder was given")
	}
	require.NoError(t, os.MkdirAll(*visionDir, 0o755))
	nights := tellingNights(t)
	for _, n := range demoNights(t) {
		if n.Log.Trip.Evening == demo.Show {
			nights["show"] = n
		}
	}
	for name, n := range nights {
		for _, look := range scene.Looks {
			sheet := nightSheet(n, look)
			img := image.NewRGBA(image.Rect(0, 0, int(sheet.Size().W), int(sheet.Size().H)))
			new(raster.Painter).Paint(img, sheet, 1)
			for _, v := range inspect.Visions {
				if v.Name != "common" && name != "show" && name != "busy" {
					continue
				}
				f, err := os.Create(filepath.Join(*visionDir, name+"-"+look.Name+"-"+v.Name+".png"))
				require.NoError(t, err)
				require.NoError(t, png.Encode(f, v.SeeAll(img)))
				require.NoError(t, f.Close())
			}
			if look.Name != scene.Paper.Name {
				continue
			}
			for i, page := range scene.Page(n, look, scene.PageView{}) {
				f, err := os.Create(filepath.Join(*visionDir, name+"-page-"+strconv.Itoa(i+1)+".png"))
				require.NoError(t, err)
				require.NoError(t, png.Encode(f, new(raster.Painter).Image(page, 1)))
				require.NoError(t, f.Close())
			}
		}
	}
}

// nightSheet lays the scenes of a night out about as a window of 1440 x 900 does.
func nightSheet(n *timeline.Night, look scene.Look) *draw.List {
	l := draw.NewList(draw.Size{W: 1200, H: 1000})
	l.Fill(draw.Rectangle(draw.Bounds(l.Size())), draw.NonZero, draw.Solid(look.Back))
	cursor := n.From.Add(n.To.Sub(n.From) * 6 / 10)
	var picked scene.StripView
	picked.Cursor = cursor
	if len(n.Contacts) > 1 {
		picked.Selected = n.Contacts[1].Ref()
	}
	put := func(s scene.Scene, x, y, h float64) {
		l.PushClip(draw.Rectangle(draw.R(x, y, s.List.Size().W, h)))
		draw.Place(l, s.List, 1, draw.Pt(x, y))
		l.PopClip()
	}
	put(scene.Sketch(n, draw.Size{W: 770, H: 380}, look, scene.SketchView{Cursor: cursor, Selected: picked.Selected}), 5, 5, 380)
	put(scene.Log(n, 410, look, scene.LogView{Cursor: cursor, Selected: picked.Selected}), 785, 5, 380)
	put(scene.Strip(n, draw.Size{W: 1190, H: 450}, look, picked), 5, 390, 450)
	legend := scene.Legend(1170, look)
	l.Fill(draw.Rectangle(draw.R(5, 845, 1190, 150)), draw.NonZero, draw.Solid(look.Panel))
	draw.Place(l, legend, 1, draw.Pt(15, 850))
	return l
}
