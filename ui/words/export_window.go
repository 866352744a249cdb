package words

// The words of the dialog that writes a night for other programs.

// ExportNightTitle, ExportNightHint and ExportNightEnding are for that dialog.
func ExportNightTitle() string { return "Export this night" }
func ExportNightHint() string {
	return "For other programs: .csv every entry as a table, .geojson and .gpx fish, pools and tracks for a map. Unless chosen otherwise, what gives a water or a person away is left out, and times go to 5 minutes. Private notes never leave."
}
func ExportNightEnding() Told {
	return Told{"The name does not say what is wanted.", "End it in .csv, .geojson or .gpx."}
}

// ExportPlacesLabel and so on name what may leave.
func ExportPlacesLabel() string { return "Places" }
func ExportPeopleLabel() string { return "Names of people" }
func ExportPoolsLabel() string  { return "Names of pools" }
func ExportNotesLabel() string  { return "Notes" }

// ExportPlacesNone and so on are the choices.
func ExportPlacesNone() string  { return "none" }
func ExportPlacesPool() string  { return "the middle of each pool" }
func ExportPlacesExact() string { return "exact, with the track" }
func ExportHidden() string      { return "left out" }
func ExportShown() string       { return "shown" }
