package screen

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// tellSheetRegions tells the buttons, the fields and the list of the topmost dialog.
func (s *Screen) tellSheetRegions() {
	if !s.modal.open() {
		return
	}
	s.tellSheet(s.modal.stack[len(s.modal.stack)-1].over)
}

func (s *Screen) tellSheet(o fyne.CanvasObject) {
	if !o.Visible() {
		return
	}
	switch o := o.(type) {
	case *fyne.Container:
		for _, c := range o.Objects {
			s.tellSheet(c)
		}
	case *container.Scroll:
		s.tellSheet(o.Content)
	case *sheetButton:
		if !o.Disabled() {
			s.tellRegion("button "+o.Text, o)
		}
	case *chooser:
		s.tellRegion("choice "+o.Selected, o)
	case *sheetEntry:
		s.tellRegion("entry", o)
	case *sheetList:
		s.tellRegion("list", o)
	}
}
