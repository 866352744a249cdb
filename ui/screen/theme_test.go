package screen

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// Ensure that every colour the toolkit asks for is one of the look.
func TestThemeNamesEveryColour(t *testing.T) {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "fyne.io/fyne/v2").Output()
	require.NoError(t, err)
	f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(strings.TrimSpace(string(dir)), "theme", "color.go"), nil, 0)
	require.NoError(t, err)
	n := 0
	th := NewTheme(scene.Dusk)
	ast.Inspect(f, func(node ast.Node) bool {
		v, ok := node.(*ast.ValueSpec)
		if !ok || !strings.HasPrefix(v.Names[0].Name, "ColorName") {
			return true
		}
		n++
		name := strings.Trim(v.Values[0].(*ast.BasicLit).Value, `"`)
		assert.Contains(t, th.names, fyne.ThemeColorName(name), "the toolkit has a colour %q that the theme does not know", name)
		return true
	})
	assert.GreaterOrEqual(t, n, 30)
}

// Ensure that words can be read on everything they stand on, in all looks.
func TestThemeContrast(t *testing.T) {
	for _, l := range scene.Looks {
		c := NewTheme(l).names
		for _, ground := range []fyne.ThemeColorName{
			theme.ColorNameBackground, theme.ColorNameButton, theme.ColorNameInputBackground,
			theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground, theme.ColorNameHeaderBackground,
		} {
			for _, text := range []fyne.ThemeColorName{theme.ColorNameForeground, theme.ColorNameHyperlink, theme.ColorNameError} {
				assert.GreaterOrEqual(t, draw.Contrast(c[text], c[ground]), 4.5, "%s: %s on %s", l.Name, text, ground)
			}
			for _, wash := range []fyne.ThemeColorName{theme.ColorNameHover, theme.ColorNameSelection, theme.ColorNameFocus} {
				under := draw.Over(c[wash], c[ground])
				assert.GreaterOrEqual(t, draw.Contrast(c[theme.ColorNameForeground], under), 4.5, "%s: text on %s over %s", l.Name, wash, ground)
			}
		}
		assert.GreaterOrEqual(t, draw.Contrast(c[theme.ColorNamePlaceHolder], c[theme.ColorNameInputBackground]), 4.5, l.Name)
		assert.GreaterOrEqual(t, draw.Contrast(c[theme.ColorNameForegroundOnPrimary], c[theme.ColorNamePrimary]), 4.5, l.Name)
		assert.GreaterOrEqual(t, draw.Contrast(c[theme.ColorNameForegroundOnError], c[theme.ColorNameError]), 4.5, l.Name)
	}
}

// Ensure that the lamp look shows nothing but red, which keeps eyes used to the dark.
func TestThemeLampIsRed(t *testing.T) {
	for name, c := range NewTheme(scene.Lamp).names {
		assert.LessOrEqual(t, c.B, c.R, name)
		assert.LessOrEqual(t, int(c.G), int(c.R)*3/4, name)
	}
}

// Ensure that the edge of menus and dialogs stands out from what they cover and from their
// own ground in every look: 1.9:1 and more. 3:1 is asked of edges that alone say where
// something is; text and shade say so as well here.
func TestEdgesShow(t *testing.T) {
	for _, l := range []scene.Look{scene.Dusk, scene.Paper, scene.Lamp} {
		th := NewTheme(l)
		for _, ground := range []draw.Color{l.Back, l.Panel, th.names[theme.ColorNameMenuBackground], th.names[theme.ColorNameOverlayBackground]} {
			assert.GreaterOrEqual(t, draw.Contrast(th.Rim(), ground), 1.9, "%s over %v", l.Name, ground)
		}
		assert.Greater(t, draw.Contrast(th.names[theme.ColorNameInputBackground], th.names[theme.ColorNameOverlayBackground]), 1.03, "%s: a field on a dialog", l.Name)
	}
}
