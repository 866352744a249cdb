package scene

import (
	"math"

	"gloamline/ui/draw"
)

// Look is a set of colours. Text colours reach a contrast of at least 4.5 on
// Back and Panel (tested); in the lamp look rank is carried by size and weight,
// since red on black leaves no room for shades.
type Look struct {
	Name  string
	Light bool // dark marks on a light ground

	Back, Panel draw.Color    // window, panel
	Edge, Rule  draw.Color    // panel border, ruled lines
	Ink         draw.Color    // chief text and marks
	Soft        draw.Color    // secondary text
	Faint       draw.Color    // what lies after the cursor
	Accent      draw.Color    // cursor, selection
	Moon        draw.Color    // the moon and what it lights
	Plate       draw.Color    // behind flies: mid-grey
	Fly         [3]draw.Color // dark, medium, light tone on the plate
	Hot         draw.Color    // hot-spot
	Fish        draw.Color    // fill of a landed fish

	Water, Land, Leaf draw.Color // by day; they die with the light
	Deep              draw.Color // water in the dark
	sky               []skyStop
}

type skyStop struct {
	decades float64 // log10 of light over the threshold of trees grey
	color   draw.Color
}

// Looks lists the three looks.
var Looks = []Look{Dusk, Paper, Lamp}

// LookNamed returns the look of that name, Dusk if there is none.
func LookNamed(name string) Look {
	for _, l := range Looks {
		if l.Name == name {
			return l
		}
	}
	return Dusk
}

// Dusk is the look for the evening: light on dark slate.
var Dusk = Look{
	Name: "dusk",
	Back: draw.Hex("#0e1216"), Panel: draw.Hex("#151a1f"), Edge: draw.Hex("#2b333b"), Rule: draw.Hex("#29313a"),
	Ink: draw.Hex("#ece9e2"), Soft: draw.Hex("#b4bbc2"), Faint: draw.Hex("#8b949c"),
	Accent: draw.Hex("#f0b64c"), Moon: draw.Hex("#d3dfF0"),
	Plate: draw.Hex("#6c747c"), Fly: [3]draw.Color{draw.Hex("#07090a"), draw.Hex("#aeb3b8"), draw.Hex("#fbfaf6")}, Hot: draw.Hex("#ff6a3d"),
	Fish:  draw.Hex("#f4f2ec"),
	Water: draw.Hex("#3f7482"), Land: draw.Hex("#1d241f"), Leaf: draw.Hex("#6b9a5c"), Deep: draw.Hex("#1b2025"),
	sky: []skyStop{
		{3.2, draw.Hex("#9a7440")}, {2.2, draw.Hex("#8c5b43")}, {1.3, draw.Hex("#674a58")}, {0.6, draw.Hex("#4b475f")},
		{0, draw.Hex("#474d54")}, {-1, draw.Hex("#343a40")}, {-2, draw.Hex("#262b30")}, {-3, draw.Hex("#1c2126")},
	},
}

// Paper is the look for print and for a bright room.
var Paper = Look{
	Name: "paper", Light: true,
	Back: draw.Hex("#ffffff"), Panel: draw.Hex("#ffffff"), Edge: draw.Hex("#c9ccc8"), Rule: draw.Hex("#e0e2df"),
	Ink: draw.Hex("#14181b"), Soft: draw.Hex("#454c52"), Faint: draw.Hex("#5f656b"),
	Accent: draw.Hex("#8f4d00"), Moon: draw.Hex("#3d5274"),
	Plate: draw.Hex("#8b9197"), Fly: [3]draw.Color{draw.Hex("#0a0c0e"), draw.Hex("#c6cacd"), draw.Hex("#ffffff")}, Hot: draw.Hex("#c43400"),
	Fish:  draw.Hex("#14181b"),
	Water: draw.Hex("#a9d0da"), Land: draw.Hex("#f4f3ee"), Leaf: draw.Hex("#5f8f52"), Deep: draw.Hex("#9aa0a5"),
	sky: []skyStop{
		{3.2, draw.Hex("#f7dfa6")}, {2.2, draw.Hex("#f0cba6")}, {1.3, draw.Hex("#dcc2cb")}, {0.6, draw.Hex("#cfc8d8")},
		{0, draw.Hex("#cdd0d3")}, {-1, draw.Hex("#bcc0c4")}, {-2, draw.Hex("#adb2b6")}, {-3, draw.Hex("#a2a7ac")},
	},
}

// Lamp is the look for reading under a red lamp on the bank: red on black.
var Lamp = Look{
	Name: "lamp",
	Back: draw.Hex("#000000"), Panel: draw.Hex("#000000"), Edge: draw.Hex("#5c130a"), Rule: draw.Hex("#3a0b05"),
	Ink: draw.Hex("#ff4a36"), Soft: draw.Hex("#ff4a36"), Faint: draw.Hex("#ea3624"),
	Accent: draw.Hex("#ff6a50"), Moon: draw.Hex("#ff6a50"),
	Plate: draw.Hex("#7a1a0f"), Fly: [3]draw.Color{draw.Hex("#000000"), draw.Hex("#c8402f"), draw.Hex("#ff8d78")}, Hot: draw.Hex("#ffb0a0"),
	Fish:  draw.Hex("#ff5f4a"),
	Water: draw.Hex("#4a110a"), Land: draw.Hex("#0c0201"), Leaf: draw.Hex("#7d2115"), Deep: draw.Hex("#1a0503"),
	sky: []skyStop{
		{3.2, draw.Hex("#5c160c")}, {1.3, draw.Hex("#471109")}, {0, draw.Hex("#300b06")}, {-1, draw.Hex("#230804")}, {-3, draw.Hex("#140402")},
	},
}

// Sky returns the colour of the light that many decades above the threshold of
// trees grey: warm down to it, truly grey from there on (in the lamp look, red).
func (l Look) Sky(decades float64) draw.Color {
	s := l.sky
	c := s[len(s)-1].color
	if decades >= s[0].decades || math.IsNaN(decades) {
		c = s[0].color
	} else {
		for i := 1; i < len(s); i++ {
			if decades >= s[i].decades {
				t := (s[i-1].decades - decades) / (s[i-1].decades - s[i].decades)
				c = draw.Mix(s[i-1].color, s[i].color, t)
				break
			}
		}
	}
	return l.drain(c, decades)
}

// drain takes the colour out of c as the light goes: none left at the threshold
// and below, all of it a decade and a half above.
func (l Look) drain(c draw.Color, decades float64) draw.Color {
	if l.Name == Lamp.Name {
		return c
	}
	return draw.Desaturate(c, 1-math.Max(0, math.Min(1, decades/1.5)))
}

// Nature returns a colour of the landscape in that light: it loses its hue down
// to the threshold and sinks towards the dark below it.
func (l Look) Nature(day draw.Color, decades float64) draw.Color {
	sink := math.Max(0, math.Min(1, -decades/2.5))
	return l.drain(draw.Mix(day, l.Deep, 0.25*math.Max(0, math.Min(1, 1-decades/2))+0.65*sink), decades)
}

// pool returns the tone of a pool that many decades over the threshold (it matters
// from there down, over three of them): pale under the moon, dark in the hill's shadow.
func (l Look) pool(decades float64, moon moonState) draw.Color {
	t := math.Max(0, math.Min(1, (decades+3)/3))
	dark, pale := l.Deep, l.Moon
	if l.Light {
		dark, pale = draw.Mix(l.Deep, l.Ink, 0.25), l.Panel
	}
	share := 0.12 + 0.42*t
	switch moon {
	case moonOn:
		share = 0.55 + 0.3*t
	case inShadow:
		share = 0.24 * t
	}
	if l.Name == Lamp.Name { // dim enough to keep eyes used to the dark
		share *= 0.62
	}
	return draw.Mix(dark, pale, share)
}
