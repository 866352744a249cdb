// Package icon holds the program's own icons: of one colour each, on a field of 24
// by 24, so that a window can paint them in its look; and the icon of the program.
// They are drawn by hand. The package knows no toolkit: it hands out bytes.
package icon

import "embed"

//go:embed *.svg app.png
var files embed.FS

// SVG is the icon of that name ("fish"), nil if there is none.
func SVG(name string) []byte {
	b, err := files.ReadFile(name + ".svg")
	if err != nil {
		return nil
	}
	return b
}

// App is the program's icon as a PNG of 256 by 256 pixels.
func App() []byte {
	b, _ := files.ReadFile("app.png")
	return b
}
