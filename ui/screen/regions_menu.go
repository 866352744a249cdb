package screen

import (
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// The toolkit keeps the bar of menus, and the texts of their lines, to itself but for the
// names of a few members. A version that renames them tells no menus, and the tests that
// point at them fail.

// tellMenuRegions tells the lines of the open menu, or the bar and what hangs from it.
func (s *Screen) tellMenuRegions() {
	if m, ok := s.win.Canvas().Focused().(*widget.PopUpMenu); ok && m.Visible() {
		s.tellLines(m.Items)
	}
	if c, ok := s.win.Canvas().(interface{ ObjectTrees() []fyne.CanvasObject }); ok {
		s.tellBar(c.ObjectTrees())
	}
}

// tellBar tells the titles of the bar of menus, which is one of the trees of a window.
func (s *Screen) tellBar(trees []fyne.CanvasObject) {
	for _, tree := range trees {
		titles, ok := member(tree, "Items").([]fyne.CanvasObject)
		if !ok {
			continue
		}
		for _, title := range titles {
			m, ok := member(title, "Menu").(*fyne.Menu)
			if !ok {
				continue
			}
			s.tellRegion("menu "+m.Label, title)
			if below, ok := title.(interface{ Child() *widget.Menu }); ok && below.Child().Visible() {
				s.tellLines(below.Child().Items)
			}
		}
	}
}

// tellLines tells the lines of a menu by their labels.
func (s *Screen) tellLines(lines []fyne.CanvasObject) {
	for _, o := range lines {
		if i, ok := member(o, "Item").(*fyne.MenuItem); ok { // else a line between
			s.tellRegion("line "+i.Label, o)
		}
	}
}

// member is an exported member of what an object points to, nil if it has none so named.
func member(o fyne.CanvasObject, name string) any {
	v := reflect.Indirect(reflect.ValueOf(o))
	if v.Kind() != reflect.Struct {
		return nil
	}
	f := v.FieldByName(name)
	if !f.IsValid() || !f.CanInterface() {
		return nil
	}
	return f.Interface()
}
