package journal

import "slices"

// decide marks proposals as deleted when what they became is removed, in the same
// change: so an import never brings back what somebody took out, and undoing the
// removal undoes that too.
func (a *act) decide(j *Journal) error {
	gone, err := a.proposed(j)
	if err != nil || len(gone) == 0 {
		return err
	}
	decisions, err := All[Decision](j)
	if err != nil {
		return err
	}
	for _, d := range decisions {
		if d.Verdict != Accepted || !gone[d.Entry] || a.says(d.Ref()) {
			continue
		}
		d.Verdict = Deleted
		a.Put = append(a.Put, d)
		a.brought[d.Ref()] = true
	}
	return nil
}

// proposed returns what is removed and may have been a proposal once. Entries carry the
// key of theirs, so that decisions need not be read for any other removal.
func (a *act) proposed(j *Journal) (map[Ref]bool, error) {
	gone := map[Ref]bool{}
	for _, r := range a.Remove {
		switch {
		case r.Kind == KindTrack || r.Kind == KindSeries:
			gone[r] = true
		case !r.Trip.IsZero():
			rec, err := j.Get(r)
			if err != nil {
				if k := KindOf(err); k == NotFound || k == Corrupt || k == Newer {
					continue // removing it, or refusing to, does not hang on this
				}
				return nil, err
			}
			if e, ok := rec.(Entry); ok && e.Base().From.Key != "" {
				gone[r] = true
			}
		}
	}
	return gone, nil
}

// says reports whether the batch itself speaks of a record.
func (a *act) says(r Ref) bool {
	return slices.Contains(a.Remove, r) || slices.ContainsFunc(a.Put, func(p Record) bool { return p.Ref() == r })
}
