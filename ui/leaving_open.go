package ui

import (
	"slices"
	"sort"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// openStep is how large the open list is written; heights in design pixels.
type openStep struct {
	Head, Line, Note             look.Role
	HeadH, LineH, More, Gap, Tab float32
}

// openSteps begin with the largest: the first at which the whole list has
// room is taken, and the usual one where none is.
var openSteps = []openStep{
	{look.Title, look.OpenLarge, look.Lead, 44, 41, 30, 14, 44},
	usualStep,
	{look.TileName, look.Lead, look.Body, 30, 27, 22, 4, 36},
}

var usualStep = openStep{look.Group, look.Open, look.Body, 36, 32, 24, 10, 38}

// openDrawn is one column of the open list.
type openDrawn struct {
	Groups []openGroup
	Step   openStep
}

// wraps tells whether an open line needs two lines of a column.
func (s openStep) wraps(text string, w float32) bool {
	return look.Measure(text, look.Body.Base()+1, look.Body.Style()).Width > w-look.U(s.Tab)
}

// noteUnder tells whether the note of a group, often a phone number, has no
// room beside the title and stands under it.
func (s openStep) noteUnder(g openGroup, w float32) bool {
	title := look.Measure(g.Title, look.TileName.Base(), look.TileName.Style()).Width
	note := look.Measure(parts.Plain(g.Note), look.Small.Base()+1, look.Small.Style()).Width
	return g.Note != "" && title+note+look.U(s.Tab+12) > w
}

// whole tells whether nothing of a column goes under the size of its step.
func (s openStep) whole(groups []openGroup, w float32) bool {
	for _, g := range groups {
		title := look.Measure(g.Title, s.Head.Size(), s.Head.Style()).Width
		note := look.Measure(parts.Plain(g.Note), s.Note.Size(), s.Note.Style()).Width
		if g.Note != "" && !s.noteUnder(g, w) {
			title += note + look.U(10)
		}
		if title > w-look.U(s.Tab) {
			return false
		}
		for _, l := range g.Lines {
			if look.Measure(l, s.Line.Size(), s.Line.Style()).Width > w-look.U(s.Tab) {
				return false
			}
		}
	}
	return true
}

func (s openStep) height(groups []openGroup, w float32) float32 {
	h := float32(0)
	for i, g := range groups {
		if i > 0 {
			h += look.U(s.Gap)
		}
		h += look.U(s.HeadH)
		if s.noteUnder(g, w) {
			h += look.U(s.More)
		}
		for _, l := range g.Lines {
			h += look.U(s.LineH)
			if s.wraps(l, w) {
				h += look.U(s.LineH * 0.63)
			}
		}
	}
	return h
}

// stepFor is the size of the open list in a room, and its two columns of a
// width.
func stepFor(groups []openGroup, w, room float32) (left, right openDrawn) {
	for i, s := range openSteps {
		left.Groups, right.Groups = s.split(groups, w, room)
		left.Step, right.Step = s, s
		fits := max(s.height(left.Groups, w), s.height(right.Groups, w)) <= room
		if fits && (i > 0 || s.whole(groups, w)) {
			return left, right
		}
	}
	left.Groups, right.Groups = usualStep.split(groups, w, room)
	left.Step, right.Step = usualStep, usualStep
	return left, right
}

// split shares groups between two columns, in their order, so that the longer
// one is as short as it can be. A long group goes on in the second column if
// all of it is then in view, or if it is the only one.
func (s openStep) split(groups []openGroup, w, room float32) (left, right []openGroup) {
	longer := func(k int) float32 { return max(s.height(groups[:k], w), s.height(groups[k:], w)) }
	cut := len(groups)
	for k := range groups {
		if longer(k) < longer(cut) {
			cut = k
		}
	}
	left, right, best := groups[:cut:cut], groups[cut:], longer(cut)
	if best <= room {
		return left, right
	}
	for g := range groups {
		if n := len(groups[g].Lines); n >= 2*leastOfGroup {
			parted := func(k int) (l, r []openGroup) { return parted(groups, g, k) }
			k := leastOfGroup + sort.Search(n-2*leastOfGroup, func(k int) bool {
				l, r := parted(leastOfGroup + k)
				return s.height(l, w) >= s.height(r, w)
			})
			if l, r := parted(k); len(groups) == 1 || max(s.height(l, w), s.height(r, w)) <= room {
				return l, r
			}
		}
	}
	return left, right
}

// leastOfGroup is how many lines of a group that is parted stand together.
const leastOfGroup = 4

// parted puts so many lines of a group at the end of the first column and the
// rest at the top of the second.
func parted(groups []openGroup, g, k int) (left, right []openGroup) {
	a, b := groups[g], groups[g]
	a.Lines, b.Lines, b.Note = a.Lines[:k], b.Lines[k:], words.L("the rest")
	left = append(slices.Clone(groups[:g]), a)
	return left, append([]openGroup{b}, groups[g+1:]...)
}

// openWords is a half of the open list as one text.
func openWords(groups []openGroup) string {
	var out []string
	for _, g := range groups {
		out = append(out, join(g.Title, g.Note)+": "+strings.Join(g.Lines, ", "))
	}
	return strings.Join(out, ". ")
}

func paintOpenList(v *openDrawn, p *parts.Pen, size fyne.Size) {
	s, y := v.Step, float32(0)
	for _, g := range v.Groups {
		side, head := look.U(27), look.U(s.HeadH)
		color := look.Text
		if g.Alarm {
			color = look.Alarm
		}
		p.Icon(g.Icon, color, 0, y+(head-side)/2, side)
		x := look.U(s.Tab)
		room := size.Width - x
		note := p.Fit(g.Note, parts.Ink{Role: s.Note, Lines: 1}, room, 0)
		under := s.noteUnder(g, size.Width)
		if g.Note != "" && !under {
			room -= min(note.W, room*0.6) + look.U(10)
		}
		title := p.Middle(g.Title, parts.Ink{Role: s.Head, Color: color, Lines: 1}, x, y, room, head)
		if under {
			p.Put(note, x, y+head-look.U(2), note.W)
			y += look.U(s.More)
		} else if g.Note != "" {
			tx := x + title.W + look.U(10)
			p.Middle(g.Note, parts.Ink{Role: s.Note, Lines: 1}, tx, y+look.U(2), size.Width-tx, head)
		}
		y += head
		for _, l := range g.Lines {
			h, lines := look.U(s.LineH), 1
			if s.wraps(l, size.Width) {
				h, lines = h+look.U(s.LineH*0.63), 2
			}
			p.Middle(l, parts.Ink{Role: s.Line, Lines: lines}, x, y, size.Width-x, h)
			y += h
		}
		y += look.U(s.Gap)
	}
}
