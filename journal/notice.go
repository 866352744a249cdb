package journal

// Notice is a dated note on what is asked at a beat, in the owner's own words: a byelaw, a
// rule of the water, a day by which a return is due. It says what somebody was told and when,
// never what is so.
type Notice struct {
	Words   string `json:"words"`
	Said    string `json:"said,omitempty"` // who said it, or where it stands
	Checked Date   `json:"checked"`        // when that was
	Due     Date   `json:"due,omitzero"`   // a day by which something is to be done; zero: none
}

// NoticeAge is after how many days a notice is to be checked again: rules change with the
// season (common practice).
const NoticeAge = 180

// Old reports whether it is to be checked again on a day.
func (n Notice) Old(today Date) bool { return n.Checked.Add(NoticeAge).Before(today) }

func (n Notice) check(c *checker) {
	if n.Words == "" {
		c.bad("notices", "a note needs its words")
	}
	if n.Checked.IsZero() {
		c.bad("notices", "a note needs the day on which it was last checked")
	}
}
