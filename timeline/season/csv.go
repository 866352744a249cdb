package season

import (
	"io"
	"math"
	"strconv"
)

// csvHead are the columns of every table; those a table has nothing for stay empty.
var csvHead = []string{
	"row", "name", "hours", "nights", "shows", "touches", "lost", "landed", "fish", "of",
	"rate", "rate_lo", "rate_hi", "nights_lo", "nights_hi", "shrunk", "share", "share_lo", "share_hi", "enough",
}

// WriteCSV writes the table as CSV (RFC 4180 but for the first lines, which begin with #
// and say what the figures are made from). Each row has its code, so that nothing hangs on
// wording.
func (t *Table) WriteCSV(w io.Writer, head ...string) error {
	c, err := beginCSV(w, head)
	if err != nil {
		return err
	}
	_ = c.Write(csvHead) // any error stays until the end
	for _, r := range t.Rows {
		out := []string{r.Code, rowName(r), num(r.Hours), strconv.Itoa(r.Nights),
			num(r.Chain.Shows), num(r.Chain.Touches), num(r.Chain.Lost), num(r.Chain.Landed), num(r.Fish), "",
			"", "", "", "", "", "", "", "", "", strconv.FormatBool(r.Enough)}
		if t.Kind != Rates {
			out[9] = num(r.Of)
		}
		if r.Rate != nil {
			out[10], out[11] = num(r.Rate.Value), num(r.Rate.Interval.Lo)
		}
		if r.Most != nil {
			out[12] = num(*r.Most)
		}
		if r.Nightly != nil {
			out[13], out[14] = num(r.Nightly.Lo), num(r.Nightly.Hi)
		}
		if r.Shrunk != nil {
			out[15] = num(*r.Shrunk)
		}
		if r.Share != nil {
			out[16], out[17], out[18] = num(r.Share.Value), num(r.Share.Interval.Lo), num(r.Share.Interval.Hi)
		}
		if err := c.Write(out); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// num prints six significant digits, more than anything here means.
func num(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', 6, 64)
}

// rowName is the name of a row's record; of one that is a night, its evening first.
func rowName(r Row) string {
	if r.Evening.IsZero() {
		return r.Name
	}
	return r.Evening.String() + " " + r.Name
}
