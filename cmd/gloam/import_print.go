package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"gloamline/journal"
	"gloamline/journal/intake"
	"gloamline/ui/words"
)

// viewOf brings what sentences about a batch need.
func viewOf(j *journal.Journal, b *intake.Batch) (words.IntakeView, error) {
	beat, err := journal.One[journal.Beat](j, b.Log.Trip.Beat)
	if err != nil {
		return words.IntakeView{}, err
	}
	zone, err := b.Log.Trip.Location()
	return words.IntakeView{Batch: b, Beat: beat.On(b.Log.Trip.Evening), Zone: zone}, err
}

// importText is the proposal in plain words, numbered as --only and the others count.
func importText(v words.IntakeView, stored *journal.Change) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Night of %s, %s\n", words.Date(v.Batch.Log.Trip.Evening), v.Beat.Name)
	for _, s := range v.Batch.Sources {
		fmt.Fprintln(&b, v.SourceLine(s))
		for _, r := range s.Remarks {
			fmt.Fprintf(&b, "    %s\n", v.RemarkLine(s, r))
		}
		if h := words.HintLine(s); h != "" {
			fmt.Fprintf(&b, "    %s: --clock %q\n", h, s.Device+"="+s.Hint.Offset.String())
		}
	}
	for _, q := range v.Batch.Questions {
		for i, line := range v.QuestionLines(q) {
			fmt.Fprintf(&b, "%s%s\n", []string{"? ", "    "}[min(i, 1)], line)
		}
	}
	fresh := v.Batch.New()
	if len(fresh) > 0 {
		b.WriteString("\n")
	}
	for i, p := range v.Batch.Proposals {
		if p.Past != "" {
			continue
		}
		mark := map[bool]string{true: "+", false: " "}[p.Ticked]
		if len(p.Conflicts) > 0 {
			mark = "!"
		}
		fmt.Fprintf(&b, "%3d %s %s\n", i+1, mark, v.ProposalLine(p))
		for _, c := range p.Conflicts {
			fmt.Fprintf(&b, "      %s\n", v.ConflictLine(c))
		}
		for _, s := range p.River {
			fmt.Fprintf(&b, "      %s\n", v.GaugeLine(s))
		}
	}
	b.WriteString("\n")
	if line := words.VerdictLine(v.Batch.Decided()); line != "" {
		fmt.Fprintln(&b, line)
	}
	switch {
	case stored == nil && len(fresh) == 0:
		b.WriteString("Nothing new is proposed.\n")
	case stored == nil:
		b.WriteString("Nothing was stored. --accept stores what has a + before it.\n")
	case stored.ID.IsZero():
		b.WriteString("There was nothing to store.\n")
	default:
		fmt.Fprintf(&b, "Stored as one change of %d records; undo takes it back.\n", len(stored.Edits))
	}
	return b.String()
}

// importedSource, importedProposal and imported are the JSON of gloam import --json.
type importedSource struct {
	intake.Summary
	Device  string   `json:"device_name,omitempty"`
	Offset  float64  `json:"offset_s"`
	Zone    string   `json:"zone_assumed,omitempty"`
	Known   bool     `json:"known"`
	Remarks []string `json:"remarks"`
}

type importedProposal struct {
	Number     int            `json:"number"`
	Key        string         `json:"key"`
	Kind       journal.Kind   `json:"kind"`
	Words      string         `json:"words"`
	Ticked     bool           `json:"ticked"`
	Confidence float64        `json:"confidence"`
	Past       string         `json:"past,omitempty"`
	Conflicts  []string       `json:"conflicts"`
	Gauge      []string       `json:"gauge,omitempty"`
	Record     journal.Record `json:"record"`
}

type imported struct {
	Evening   string             `json:"evening"`
	Trip      journal.ID         `json:"trip"`
	Sources   []importedSource   `json:"sources"`
	Questions []string           `json:"questions"`
	Proposals []importedProposal `json:"proposals"`
	Stored    *int               `json:"stored,omitempty"` // records changed, with --accept
}

func importJSON(v words.IntakeView, stored *journal.Change) string {
	b := v.Batch
	out := imported{Evening: b.Log.Trip.Evening.String(), Trip: b.Log.Trip.ID, Sources: []importedSource{}, Questions: []string{}, Proposals: []importedProposal{}}
	for _, s := range b.Sources {
		x := importedSource{Summary: intake.Summarise(s.File), Device: s.Device, Offset: s.Record.Offset.Seconds(), Zone: s.Record.Zone, Known: s.Known, Remarks: []string{}}
		for _, r := range s.Remarks {
			x.Remarks = append(x.Remarks, v.RemarkLine(s, r))
		}
		out.Sources = append(out.Sources, x)
	}
	for _, q := range b.Questions {
		out.Questions = append(out.Questions, strings.Join(v.QuestionLines(q), " "))
	}
	for i, p := range b.Proposals {
		x := importedProposal{Number: i + 1, Key: p.Key, Kind: p.Record.Ref().Kind, Words: v.ProposalLine(p), Ticked: p.Ticked, Confidence: p.Confidence, Past: string(p.Past), Conflicts: []string{}, Record: p.Record}
		for _, c := range p.Conflicts {
			x.Conflicts = append(x.Conflicts, v.ConflictLine(c))
		}
		for _, s := range p.River {
			x.Gauge = append(x.Gauge, v.GaugeLine(s))
		}
		out.Proposals = append(out.Proposals, x)
	}
	if stored != nil {
		n := len(stored.Edits)
		out.Stored = &n
	}
	text, err := json.MarshalIndent(out, "", " ")
	if err != nil {
		return fmt.Sprintf("{\"error\":%q}\n", err)
	}
	return string(text) + "\n"
}
