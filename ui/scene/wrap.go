package scene

import (
	"strings"

	"gloamline/ui/draw"
)

// wrap breaks s into lines at most width dp wide, at spaces; a word longer than
// a line is cut with an ellipsis rather than let out of its column.
func wrap(f draw.Font, s string, width float64) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(s) {
		try := w
		if line != "" {
			try = line + " " + w
		}
		if draw.Measure(f, try).Width <= width {
			line = try
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = draw.Fit(f, w, width)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// paragraph draws wrapped text from the baseline at p downwards and returns the
// baseline of the line after it.
func paragraph(s draw.Surface, f draw.Font, c draw.Color, text string, p draw.Point, width, leading float64) float64 {
	for _, l := range wrap(f, text, width) {
		s.Text(draw.Text{S: l, At: p, Font: f, Color: c})
		p.Y += leading
	}
	return p.Y
}
