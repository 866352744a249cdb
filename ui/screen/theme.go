package screen

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gloamline/assets/font"
	"gloamline/assets/icon"
	"gloamline/ui/draw"
	"gloamline/ui/scene"
)

// Theme gives the toolkit's own widgets the colours of a look and our typeface.
type Theme struct {
	Look  scene.Look
	names map[fyne.ThemeColorName]draw.Color
}

var _ fyne.Theme = (*Theme)(nil)

// NewTheme makes the theme of a look.
func NewTheme(l scene.Look) *Theme {
	tint := 1.0
	if l.Name == scene.Lamp.Name { // red on black leaves little room between ground and ink
		tint = 0.45
	}
	raised := func(k float64) draw.Color { return draw.Mix(l.Panel, l.Ink, k*tint) }
	over := raised(0.035) // menus and dialogs stand out from what they cover
	if l.Name == scene.Lamp.Name {
		over = draw.Mix(l.Panel, l.Ink, 0.09)
	}
	field := raised(0.075) // inputs stand out from dialogs too
	if l.Name == scene.Lamp.Name {
		field = draw.Mix(l.Panel, l.Ink, 0.2)
	}
	bad, good := draw.Hex("#ff8a70"), draw.Hex("#8fd08a")
	if l.Light {
		bad, good = draw.Hex("#a82410"), draw.Hex("#20692a")
	}
	if l.Name == scene.Lamp.Name { // nothing but red, so that eyes stay used to the dark
		bad, good = l.Hot, l.Ink
	}
	onAccent := draw.Readable(l.Back, l.Accent, 4.5)
	return &Theme{Look: l, names: map[fyne.ThemeColorName]draw.Color{
		theme.ColorNameBackground:                l.Back,
		theme.ColorNameButton:                    raised(0.13),
		theme.ColorNameDisabledButton:            raised(0.04),
		theme.ColorNameDisabled:                  draw.Mix(l.Panel, l.Ink, 0.5),
		theme.ColorNameError:                     bad,
		theme.ColorNameFocus:                     draw.Fade(l.Accent, 0.4*tint),
		theme.ColorNameForeground:                l.Ink,
		theme.ColorNameForegroundOnError:         draw.Readable(l.Back, bad, 4.5),
		theme.ColorNameForegroundOnPrimary:       onAccent,
		theme.ColorNameForegroundOnSuccess:       draw.Readable(l.Back, good, 4.5),
		theme.ColorNameForegroundOnWarning:       onAccent,
		theme.ColorNameHeaderBackground:          raised(0.06),
		theme.ColorNameHover:                     draw.Fade(l.Ink, 0.09*tint),
		theme.ColorNameHyperlink:                 l.Accent,
		theme.ColorNameInnerWindowBorder:         l.Edge,
		theme.ColorNameInnerWindowBorderInactive: l.Edge,
		theme.ColorNameInputBackground:           field,
		theme.ColorNameInputBorder:               draw.Mix(l.Edge, l.Ink, 0.22),
		theme.ColorNameMenuBackground:            over,
		theme.ColorNameOverlayBackground:         over,
		theme.ColorNamePlaceHolder:               l.Faint,
		theme.ColorNamePressed:                   draw.Fade(l.Ink, 0.18*tint),
		theme.ColorNamePrimary:                   l.Accent,
		theme.ColorNameScrollBar:                 draw.Fade(l.Soft, 0.7),
		theme.ColorNameScrollBarBackground:       draw.Fade(l.Soft, 0.08),
		theme.ColorNameSelection:                 draw.Fade(l.Accent, 0.28*tint),
		theme.ColorNameSeparator:                 l.Edge,
		theme.ColorNameShadow:                    draw.Fade(rim(l), 0.8), // the edge of menus; dialogs have a veil of their own
		theme.ColorNameSuccess:                   good,
		theme.ColorNameWarning:                   l.Accent,
	}}
}

// rim is the edge of what lies over the window. It stands out from both grounds: the
// toolkit draws its menus with no edge but a shadow, which a dark window swallows.
func rim(l scene.Look) draw.Color {
	if l.Name == scene.Lamp.Name {
		return draw.Mix(l.Panel, l.Ink, 0.9) // red on black has little else to show an edge with
	}
	return draw.Mix(l.Panel, l.Ink, 0.55)
}

// Rim is the colour of the edge of dialogs, menus and tips.
func (t *Theme) Rim() draw.Color { return rim(t.Look) }

// Color is part of fyne.Theme. A name that the toolkit may learn later gets the ink,
// which is legible and of the look.
func (t *Theme) Color(n fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	if c, ok := t.names[n]; ok {
		return c
	}
	return t.Look.Ink
}

var (
	regularFont = fyne.NewStaticResource("GloamlineSans-Regular.ttf", font.Regular())
	mediumFont  = fyne.NewStaticResource("GloamlineSans-Medium.ttf", font.Medium())
	boldFont    = fyne.NewStaticResource("GloamlineSans-Bold.ttf", font.Bold())
)

// Font is part of fyne.Theme. Our figures are all of one width, so the text style
// for code is the regular cut too.
func (t *Theme) Font(s fyne.TextStyle) fyne.Resource {
	switch {
	case s.Bold:
		return boldFont
	case s.Underline:
		return mediumFont
	}
	return regularFont
}

// Icon is part of fyne.Theme: the toolkit's own signs, which follow the colours.
func (t *Theme) Icon(n fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(n) }

// Size is part of fyne.Theme.
func (t *Theme) Size(n fyne.ThemeSizeName) float32 {
	switch n {
	case theme.SizeNameText:
		return 13.5
	case theme.SizeNameCaptionText:
		return 12
	case theme.SizeNameSubHeadingText:
		return 16
	case theme.SizeNameHeadingText:
		return 22
	case theme.SizeNameInlineIcon:
		return 18
	case theme.SizeNameInnerPadding:
		return 7
	case theme.SizeNameModalBlurRadius:
		return 0 // what lies behind a question stays legible
	case theme.SizeNameInputRadius, theme.SizeNameButtonRadius, theme.SizeNameSelectionRadius:
		return 4
	}
	return theme.DefaultTheme().Size(n)
}

// Icon is one of our icons, in the colours of the look.
func Icon(name string) fyne.Resource {
	return theme.NewThemedResource(fyne.NewStaticResource(name+".svg", icon.SVG(name)))
}

// AppIcon is the program's icon.
func AppIcon() fyne.Resource { return fyne.NewStaticResource("gloamline.png", icon.App()) }
