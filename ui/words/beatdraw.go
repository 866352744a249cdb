package words

import (
	"fmt"

	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
)

// The words of the table on which beats are drawn.

// NoBeatOnTable and PlaceFirst stand where the next step is told.
func NoBeatOnTable() string { return "Begin a new beat, or choose one at the left to change it." }
func PlaceFirst() string {
	return "First say where the beat is: type or paste its place at the right, or read in a walk along the bank."
}

// PoolNumbered is the name that a pool has until it gets one.
func PoolNumbered(n int) string { return fmt.Sprintf("Pool %d", n) }

// UpperHalf and LowerHalf name what a pool is split into.
func UpperHalf(pool string) string { return "Upper " + PoolName(pool) }
func LowerHalf(pool string) string { return "Lower " + PoolName(pool) }

// ToolName is a tool of the plan, as on its button; ToolTip says what it does.
func ToolName(tool string) string { return tools[tool].name }
func ToolTip(tool string) string  { return tools[tool].tip }

var tools = map[string]struct{ name, tip string }{
	"choose":  {"Choose", "Picks out pools, lines and marks, bends and moves them"},
	"river":   {"River", "Draws both banks by the middle of the river and its width"},
	"bank":    {"Bank", "Draws one bank line, from the top down"},
	"pool":    {"Pool", "Draws round a pool"},
	"ends":    {"Head and tail", "Marks where the water enters the pool picked out, and its lower end"},
	"trees":   {"Trees", "Draws round an area of trees"},
	"entry":   {"Way in", "Marks a way into or out of the water"},
	"hazard":  {"Take care", "Marks a deep hole, a fence, a power line, a soft bank"},
	"lie":     {"Lie", "Marks where fish are known to lie"},
	"mark":    {"Mark", "Marks anything worth knowing by night: a gate, a stone, a bench"},
	"split":   {"Split", "Parts the pool picked out in two"},
	"measure": {"Measure", "Measures along the river or across it"},
	"tracing": {"Place the picture", "Lays the picture under the plan by two of its points"},
}

// ToolPrompt says what to do next with a tool: n corners are drawn, side is the bank that comes
// next, pool the name of the one picked out.
func ToolPrompt(tool string, n int, side geo.Bank, pool string) string {
	of := "the pool"
	if pool != "" {
		of = pool
	}
	switch tool {
	case "choose":
		return "Click what you want to change. Drag its corners; a dot between two corners makes a new one."
	case "river":
		return corners(n, 2, "Click along the middle of the river, from the top down.", "end the river")
	case "bank":
		return corners(n, 2, "Click along the "+BankName(side)+", from the top down.", "end the line")
	case "pool":
		return corners(n, 3, "Click round a pool, corner by corner.", "close it")
	case "trees":
		return corners(n, 3, "Click round the trees, corner by corner.", "close them")
	case "ends":
		if n == 0 {
			return "Click the head of " + of + ", where the water enters."
		}
		return "Now click its tail, the shallow lower end."
	case "split":
		if n == 0 {
			return "Click on one bank beside " + of + ", where it is to be parted."
		}
		return "Now click on the other bank, straight across."
	case "entry":
		return "Click where one gets into the water or out of it."
	case "hazard":
		return "Click where one must take care."
	case "lie":
		return "Click where fish lie."
	case "mark":
		return "Click what is worth knowing by night."
	}
	return ""
}

func corners(n, least int, begin, end string) string {
	switch {
	case n == 0:
		return begin
	case n < least:
		return begin + " " + number(least-n, "more at least", "more at least") + "."
	}
	return "Go on, or press Enter or double-click to " + end + ". Ctrl+Z takes the last corner back."
}

// MeasurePrompt tells a length measured along n corners.
func MeasurePrompt(n int, l units.Metres) string {
	if n == 0 {
		return "Click from place to place to measure."
	}
	return fmt.Sprintf("%s so far. Enter ends it.", Metres1(l))
}

// Metres1 prints a length on the plan: 84 m, 3.5 m.
func Metres1(l units.Metres) string {
	if l < 10 {
		return fmt.Sprintf("%.1f m", float64(l))
	}
	return fmt.Sprintf("%.0f m", float64(l))
}

// TracingPrompt says which of the four clicks that place a picture comes next.
func TracingPrompt(step int) string {
	switch step {
	case 0:
		return "Click a point of the picture that you know: a bridge, a bend, a gate."
	case 1:
		return "Now click where that point belongs, or type its place at the right."
	case 2:
		return "Click a second point of the picture, far from the first."
	case 3:
		return "Click where the second belongs, or type its place or its distance from the first."
	}
	return "Choose a picture first: Beat, Picture to trace from …"
}

// Things that cannot be done on the plan.
func ChoosePoolFirst() Told {
	return Told{"No pool is picked out there.", "Click a pool first."}
}
func MoreCorners(n int) Told {
	return Told{"That is not yet a shape.", "Click " + number(n, "more corner", "more corners") + " at least, or press Escape to leave it."}
}
func BanksDrawn() Told {
	return Told{"Banks are drawn already.", "Bend them corner by corner, or remove them first."}
}
func NoNextPool() Told {
	return Told{"There is no pool below this one to join it to.", "Pick out the upper one of two pools."}
}
func ClickImageFirst() Told {
	return Told{"No point of the picture is chosen yet.", "Click one on the picture first."}
}
func NoSuchZone(name string) Told {
	return Told{fmt.Sprintf("“%s” is no time zone known here.", name), "Choose one from the list, or write a name such as Europe/London."}
}

// Files that are not read in.
func NoImage() Told {
	return Told{"That file is no picture that can be shown here.", "Choose a JPEG, PNG or GIF."}
}
func ImageTooLarge() Told {
	return Told{"That picture has more than 50 million points.", "Make it smaller first; 3000 points across are plenty to draw from."}
}
func ImageBroken(kind string) Told {
	return Told{"The picture is damaged or cut short: it calls itself " + kind + ".", "Open it elsewhere and save it anew."}
}
func NoWalk() Told {
	return Told{"The file holds no track and no route.", "Choose one that was recorded while walking along the water."}
}
func WalkRefused(reason string) Told {
	return Told{"No walk was read in: " + reason + ".", "Choose a GPX file."}
}
func ListRefused(line int, what, do string) Told {
	return Told{fmt.Sprintf("Line %d of the list: %s.", line, what), do}
}

// BeatNotYet is why a drawing cannot be stored yet.
func BeatNotYet(what, do string) Told {
	return Told{"The beat cannot be stored yet: " + what + ".", do + " The drawing is kept meanwhile."}
}

// SketchIsLater is why a sketch cannot hold from an evening before the one that stands.
func SketchIsLater(since journal.Date) Told {
	return Told{"The sketch that stands holds from " + NightDate(since) + " on.", "Choose a later evening, or correct it."}
}

// PlaceWanted stands at an empty place, PoolWantsName at an empty name.
func PlaceWanted() string {
	return "A beat needs its place: without it there is no light to work out."
}
func PoolWantsName() string { return "A pool needs a name, to be found in the log by it." }

// PlaceInOrder says what numbers there are.
func PlaceInOrder(n int) string { return fmt.Sprintf("Choose a number from 1 to %d.", n) }

// Twice joins what happened and what to do.
func Twice(what, do string) string { return sentence(what) + " " + do }

// StoreTitle is what the menu calls storing the drawing.
func StoreTitle(stands bool) string {
	if stands {
		return "Store the change …"
	}
	return "Store the beat"
}
