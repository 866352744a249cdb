package timeline

import (
	"gloamline/journal"
	"gloamline/timeline/light"
)

// weather turns what was noted of the sky into the weather of the light model.
func weather(skies []Noted[journal.Sky]) *light.Weather { return light.NewWeather(skyNotes(skies)) }

// skyNotes reads the sky entries as notes of the light model, in their order. A
// kind of cloud that nobody noted counts as average; a note without a count of
// eighths keeps the last one, and the last kind. A note that says nothing of cloud
// or moon, such as the bare moment at which the trees went grey, is a mark only.
func skyNotes(skies []Noted[journal.Sky]) []light.SkyNote {
	var notes []light.SkyNote
	var cloud light.Cloud
	for _, s := range skies {
		if s.Entry.Cloud.IsZero() && s.Entry.CloudKind.IsZero() && s.Entry.Moon.IsZero() {
			continue
		}
		if n, ok := s.Entry.Cloud.Get(); ok {
			cloud.Eighths, cloud.Noted = n, true
			cloud.Kind = light.Average
		} else if s.Entry.Cloud.IsNone() {
			cloud = light.Cloud{Noted: true}
		}
		if k, ok := s.Entry.CloudKind.Get(); ok {
			cloud.Kind = cloudKinds[k]
		}
		notes = append(notes, light.SkyNote{
			At: s.At.Mid(), Cloud: cloud, Moon: moonSeens[s.Entry.Moon.Or("")], Step: s.Entry.Step,
		})
	}
	return notes
}

var cloudKinds = map[journal.CloudKind]light.CloudKind{
	journal.ThinCloud: light.Thin, journal.AverageCloud: light.Average, journal.DarkCloud: light.Dark,
}

// moonSeens: a moon behind cloud or hill has no disc to be seen; the hill is the
// skyline's business, so for the light it stands behind cloud.
var moonSeens = map[journal.MoonSeen]light.MoonSeen{
	"": light.NotNoted, journal.MoonClear: light.MoonClear, journal.MoonVeiled: light.MoonVeiled, journal.MoonBehind: light.MoonHidden,
}
