package svg

import (
	"encoding/base64"
	"maps"
	"slices"
	"strings"

	"gloamline/ui/draw"
)

var weights = [...]string{"400", "500", "700"}

// style is the sheet of the document. Kerning and ligatures are off, since widths
// are measured without them.
func (s *writer) style() string {
	var b strings.Builder
	if s.fonts {
		for w := draw.Regular; w <= draw.Bold; w++ {
			if len(s.used[w]) == 0 {
				continue
			}
			file, err := subset(w.TTF(), slices.Collect(maps.Keys(s.used[w])))
			if err != nil {
				s.err = err
				return ""
			}
			b.WriteString("@font-face{font-family:'" + draw.Family + "';font-weight:" + weights[w] +
				";src:url(data:font/woff;base64," + base64.StdEncoding.EncodeToString(file) + ") format('woff')}")
		}
	}
	b.WriteString("text{font-family:'" + draw.Family + "',Inter,'Noto Sans','DejaVu Sans',Arial,sans-serif;" +
		"font-variant-numeric:tabular-nums;font-kerning:none;font-variant-ligatures:none;white-space:pre}")
	return b.String()
}
