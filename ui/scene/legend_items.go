package scene

import (
	"gloamline/geo"
	"gloamline/journal"
	"gloamline/journal/units"
	"gloamline/timeline"
	"gloamline/ui/draw"
	"gloamline/ui/words"
)

// legendItems lists every code, as they are read: what came, the flies, the light,
// the water's edge, what is picked out. Each is drawn by the code that draws it.
func legendItems(look Look) []legendItem {
	items := legendContacts(look)
	items = append(items, legendTackle(look)...)
	items = append(items, legendLight(look)...)
	items = append(items, legendPlaces(look)...)
	return append(items, legendPicked(look)...)
}

func legendContacts(look Look) []legendItem {
	contact := func(w float64, k journal.Contact, text string) legendItem {
		return legendItem{w: w, text: text, on: came(k), draw: func(s draw.Surface, c draw.Point) { drawContact(s, look, k, c, 1) }}
	}
	touch := func(t journal.Touch) journal.Contact { return journal.Contact{Touch: t} }
	kept := touch(journal.Landed)
	kept.Fate = journal.Of(journal.Kept)
	return []legendItem{
		contact(16, touch(journal.Landed), words.TouchName(journal.Landed)),
		contact(16, kept, words.LegendKept()),
		contact(16, touch(journal.Lost), words.TouchName(journal.Lost)),
		{w: 58, text: words.LegendSizes(), on: weighed, draw: func(s draw.Surface, c draw.Point) {
			for i, oz := range []float64{12, 24, 48} {
				k := touch(journal.Landed)
				k.Weight = journal.Of(units.Weight{G: units.Grams(oz * 28.349523125)})
				drawContact(s, look, k, c.Add(draw.Pt([]float64{-22, -4, 18}[i], 0)), 1)
			}
		}},
		contact(12, touch(journal.Pull), words.TouchName(journal.Pull)),
		contact(12, touch(journal.Pluck), words.TouchName(journal.Pluck)),
		contact(12, touch(journal.Boil), words.TouchName(journal.Boil)),
		contact(12, touch(journal.Follow), words.TouchName(journal.Follow)),
		{w: 12, text: words.LegendPhoto(), on: photographed, draw: func(s draw.Surface, c draw.Point) { drawPhotoSign(s, look, c, 1) }},
		{w: 26, text: words.LegendUncertain(), on: uncertain, draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-10, c.Y), draw.Pt(c.X+10, c.Y)), draw.Stroke{Width: 8, Cap: draw.RoundCap}, draw.Fade(look.Fish, 0.28))
		}},
	}
}

func legendTackle(look Look) []legendItem {
	fly := func(known bool, sil journal.Silhouette, tone journal.Tone, hot bool, text string) legendItem {
		return legendItem{w: 16, text: text, on: tied(known), draw: func(s draw.Surface, c draw.Point) {
			d := journal.Dress{Length: journal.Of(units.Length{M: 0.0254, Unit: units.Inch}), Silhouette: journal.Of(sil), Tone: journal.Of(tone)}
			if hot {
				d.HotSpot = journal.Of("orange")
			}
			drawFly(s, look, known, d, draw.Pt(c.X, c.Y+5), 11, 1)
		}}
	}
	line := func(st draw.Stroke, text string, on func(*timeline.Night) bool) legendItem {
		return legendItem{w: 26, text: text, on: on, draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-12, c.Y), draw.Pt(c.X+12, c.Y)), st, draw.Fade(look.Ink, 0.85))
		}}
	}
	return []legendItem{
		fly(true, journal.Slim, journal.DarkTone, true, words.LegendFlySlim()),
		fly(true, journal.Full, journal.LightTone, false, words.LegendFlyFull()),
		fly(false, journal.Slim, journal.DarkTone, false, words.LegendFlyUnknown()),
		line(flyStroke(0, true), words.LegendPoint(), tied(true)),
		line(flyStroke(1, true), words.LegendDropper(), dropper),
		line(flyStroke(0, false), words.LegendLengthUnknown(), tied(false)),
		{w: 26, text: words.LegendOffRule(), on: offRules, draw: func(s draw.Surface, c draw.Point) {
			drawOffRule(s, look.Soft, c.X-12, c.X+12, c.Y)
		}},
		{w: 26, text: words.LegendRun(), on: rods(1), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(bracketPath(c.X-12, c.X+12, c.Y), draw.Stroke{Width: 1.6}, look.Ink)
		}},
	}
}

func legendLight(look Look) []legendItem {
	upright := func(s draw.Surface, c draw.Point) {
		s.Stroke(draw.Line(draw.Pt(c.X, c.Y-7), draw.Pt(c.X, c.Y+7)), momentStroke, look.Ink)
	}
	trace := func(rod int, text string) legendItem {
		return legendItem{w: 28, text: text, on: rods(rod + 1), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-13, c.Y), draw.Pt(c.X+13, c.Y)), rodStroke(rod), look.Ink)
		}}
	}
	return []legendItem{
		{w: 26, text: words.LegendOpenSky(), on: always, draw: func(s draw.Surface, c draw.Point) {
			s.Fill(draw.Rectangle(draw.R(c.X-12, c.Y-5, 24, 10)), draw.NonZero, draw.Solid(draw.Fade(look.Ink, 0.14)))
			s.Stroke(draw.Line(draw.Pt(c.X-12, c.Y), draw.Pt(c.X+12, c.Y)), draw.Stroke{Width: 1.4}, look.Soft)
		}},
		trace(0, words.LegendTrace(0)),
		trace(1, words.LegendTrace(1)),
		trace(2, words.LegendTrace(2)),
		{w: 26, text: words.LegendThreshold(), on: always, draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-12, c.Y), draw.Pt(c.X+12, c.Y)), thresholdStroke, draw.Fade(look.Ink, 0.6))
		}},
		{w: 10, text: words.LegendGreyNoted(), on: greyWasNoted, draw: func(s draw.Surface, c draw.Point) { drawGreyNoted(s, look, c, 1) }},
		{w: 6, text: words.LegendMoment(), on: always, draw: upright},
		{w: 14, text: words.LegendCloud(), on: cloudNoted, draw: func(s draw.Surface, c draw.Point) { drawCloud(s, look, c, 3, 1) }},
		{w: 26, text: words.LegendLevel(), on: levelKnown, draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Polyline([]draw.Point{{X: c.X - 12, Y: c.Y + 3}, {X: c.X - 2, Y: c.Y + 3}, {X: c.X - 2, Y: c.Y - 3}, {X: c.X + 12, Y: c.Y - 3}}), levelStroke, draw.Fade(look.Ink, 0.7))
			drawLevelPoint(s, look, draw.Pt(c.X-2, c.Y-3), 1)
		}},
		{w: 16, text: words.LegendMoon(), draw: func(s draw.Surface, c draw.Point) { drawMoon(s, look, c, 7, 0.6, true, 1) }},
	}
}

func legendPlaces(look Look) []legendItem {
	pool := func(m moonState, text string) legendItem {
		return legendItem{w: 36, text: text, draw: func(s draw.Surface, c draw.Point) {
			fill := look.drain(look.pool(-1, m), -1)
			box := draw.R(c.X-18, c.Y-6, 22, 12)
			shape, edge := draw.RoundRect(box, 4), draw.Stroke{Width: 1.2}
			s.Fill(shape, draw.NonZero, draw.Solid(fill))
			if m == inShadow {
				drawShade(s, look, shape, box, fill)
			}
			s.Stroke(shape, edge, draw.Mix(fill, look.Ink, 0.5))
			drawMoonSign(s, look, m, draw.Pt(c.X+13, c.Y))
		}}
	}
	return []legendItem{
		pool(moonOn, words.LegendMoonlit()),
		pool(inShadow, words.LegendShadow()),
		{w: 36, text: words.LegendBank(), on: rods(1), draw: func(s draw.Surface, c draw.Point) {
			drawRun(s, look, []draw.Point{c.Add(draw.Pt(-15, 0)), c, c.Add(draw.Pt(9, 0))}, rodStroke(0), true, true, look.Ink)
		}},
		{w: 30, text: words.LegendNoBank(), on: bankless, draw: func(s draw.Surface, c draw.Point) {
			drawRun(s, look, []draw.Point{c.Add(draw.Pt(-12, 0)), c, c.Add(draw.Pt(8, 0))}, noBankStroke, false, false, look.Ink)
		}},
		{w: 14, text: words.LegendTrees(), on: hasTrees, draw: func(s draw.Surface, c draw.Point) {
			for _, d := range []draw.Point{{X: -4, Y: 2}, {X: 0, Y: -2}, {X: 4, Y: 2}} {
				p := c.Add(d)
				s.Stroke(draw.Line(draw.Pt(p.X-1.7, p.Y+3.4), draw.Pt(p.X+1.7, p.Y-3.4)), draw.Stroke{Width: 1.25, Cap: draw.RoundCap}, look.Soft)
			}
		}},
		{w: 12, text: words.LegendFlow(), on: always, draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Polyline([]draw.Point{{X: c.X - 3, Y: c.Y - 5}, {X: c.X + 4, Y: c.Y}, {X: c.X - 3, Y: c.Y + 5}}), draw.Stroke{Width: 1.4, Cap: draw.RoundCap, Join: draw.RoundJoin}, draw.Fade(look.Ink, 0.45))
		}},
		{w: 12, text: words.LegendEntry(), on: spots(geo.RoleEntry), draw: func(s draw.Surface, c draw.Point) { drawEntry(s, look, c) }},
		{w: 14, text: words.LegendHazard(), on: spots(geo.RoleHazard), draw: func(s draw.Surface, c draw.Point) { drawHazard(s, look, c) }},
		{w: 14, text: words.LegendLie(), on: spots(geo.RoleLie), draw: func(s draw.Surface, c draw.Point) { drawLie(s, look, c) }},
		{w: 10, text: words.LegendMark(), on: spots(geo.RoleMark), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X-3.5, c.Y), draw.Pt(c.X+3.5, c.Y)), signStroke, look.Soft)
			s.Stroke(draw.Line(draw.Pt(c.X, c.Y-3.5), draw.Pt(c.X, c.Y+3.5)), signStroke, look.Soft)
		}},
	}
}

// legendPicked are the codes of the window alone.
func legendPicked(look Look) []legendItem {
	return []legendItem{
		{w: 18, text: words.LegendSelected(), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.RoundRect(draw.R(c.X-9, c.Y-6.5, 18, 13), 4), ringStroke, look.Accent)
		}},
		{w: 6, text: words.LegendCursor(), draw: func(s draw.Surface, c draw.Point) {
			s.Stroke(draw.Line(draw.Pt(c.X, c.Y-8), draw.Pt(c.X, c.Y+8)), cursorStroke, look.Accent)
		}},
	}
}
