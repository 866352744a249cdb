package journal

// Check reads the whole journal and reports each fault: first what the store
// finds wrong with the file and with records it cannot read, then records that
// contradict themselves or each other. Nothing is changed.
func (j *Journal) Check() ([]Fault, error) {
	out, err := j.store.Check()
	if err != nil {
		return out, err
	}
	var trips []Trip
	check := func(envs []Envelope) {
		for _, e := range envs {
			r, err := Unseal(e)
			if err != nil {
				continue // the store has said so
			}
			for _, f := range FieldErrors(Check(r)) {
				out = append(out, Fault{"record", e.Ref(), f})
			}
			if t, ok := r.(Trip); ok {
				trips = append(trips, t)
			}
		}
	}
	for _, k := range RecordKinds {
		envs, err := j.store.List(k)
		if err != nil {
			return out, err
		}
		check(envs)
	}
	v := j.viewOf(Batch{})
	for _, t := range trips {
		envs, err := j.store.Entries(t.ID)
		if err != nil {
			return out, err
		}
		check(envs)
		for _, f := range v.checkTrip(t) {
			out = append(out, Fault{"trip", t.Ref(), f})
		}
		es, _ := j.entriesOf(t.ID)
		l := NewLog(t, es)
		for _, f := range v.faults(l, nil) {
			ref := t.Ref()
			if e, ok := l.Find(f.ID); ok {
				ref = e.Ref()
			}
			out = append(out, Fault{"night of " + t.Evening.String(), ref, f})
		}
	}
	return out, nil
}
