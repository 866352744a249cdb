package scene

import (
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

const emptyLine = 19.0

// emptyLog says on a night without entries what to do first.
func emptyLog(s draw.Surface, look Look, n *timeline.Night, width float64) {
	y, c := logPad+15, look.Ink
	for _, line := range words.EmptyLog(n) {
		y = paragraph(s, textFont, c, line, draw.Pt(logPad, y), width-2*logPad, emptyLine) + 6
		c = look.Soft
	}
}

func emptyLogHeight(n *timeline.Night, width float64) float64 {
	h := 0.0
	for _, line := range words.EmptyLog(n) {
		h += emptyLine*float64(len(draw.Wrap(textFont, line, width-2*logPad))) + 6
	}
	return h
}
