package paper

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/judge"
)

// A part of the close-out: what is left to do of one sort.
type part struct {
	title, empty, more string
	lines              []string
}

// parts sorts all that the scene leaves to do: each line of the end state
// stands in one of them.
func (m *maker) parts() []part {
	open := part{title: "At the scene, unexplained or unclear", empty: "Nothing.", more: "the open lists"}
	back := part{title: "Bring back", empty: "Nobody else has anything.", more: "the open lists"}
	restock := part{title: "Restock", empty: "Nothing was used up.", more: "the restock list"}
	unfit := part{title: "Out of service or not ready", empty: "Nothing.", more: "the open lists"}
	passed := part{title: "Passed by an officer", empty: "Nothing.", more: "the open lists"}
	lost := part{title: "Lost", empty: "Nothing.", more: "the lost reports"}
	for _, r := range m.s.EndState() {
		it := &m.d.Items[r.Line]
		text := fmt.Sprintf("%s (%s): %s", some(it, r.Quantity), it.Rig, answered(r.Words))
		to := &unfit
		switch r.Place.Kind {
		case model.Tarp, model.At, model.Unexplained:
			to = &open
			if r.Place.Kind == model.At {
				text = strings.Replace(text, "still out", "still out "+judge.Where(m.d, r.Place), 1)
			}
		case model.With, model.Riding:
			to = &back
			text = fmt.Sprintf("%s (%s): %s", some(it, r.Quantity), it.Rig, strings.Replace(answered(r.Words), r.Place.Name, m.rigOrAgency(r.Place.Name), 1))
		case model.Used:
			to = &restock
			text = fmt.Sprintf("%s (%s)", some(it, r.Quantity), it.Rig)
		case model.Lost:
			to = &lost
		default:
			if strings.Contains(r.Words, "officer override") {
				to = &passed
				text = strings.Replace(text, "on rig with officer override: ", "", 1) + m.passedBy(it.ID)
			}
		}
		to.lines = append(to.lines, text)
	}
	for _, name := range m.scene.Unknown {
		open.lines = append(open.lines, name+": in no table; say what it was")
	}
	for _, i := range m.d.ByItem() {
		if m.s.Line(i).Contest != nil {
			open.lines = append(open.lines, m.d.Items[i].Name+" ("+m.d.Items[i].Rig+"): two claims; go and look")
		}
	}
	return []part{open, back, unfit, passed, lost, restock}
}

// openLines counts what is not home and was not used, and what is unclear.
func (m *maker) openLines(unclear part) int {
	n := len(unclear.lines)
	for _, r := range m.s.Books() {
		switch r.Place.Kind {
		case model.Tarp, model.At, model.Unexplained, model.Used:
		default:
			n++
		}
	}
	return n
}

func (m *maker) rigOrAgency(id string) string {
	if a := m.d.Agency(id); a != nil {
		text := a.Name
		if a.Phone != "" {
			text += ", " + a.Phone
		}
		return text
	}
	return m.rigName(id)
}

// passedBy says which officers let checks of an item pass in the scene.
func (m *maker) passedBy(item string) string {
	var who []string
	for _, o := range m.scene.Overrides {
		if name := m.members(o.By); o.Item == item && !slices.Contains(who, name) {
			who = append(who, name)
		}
	}
	if len(who) == 0 {
		return ""
	}
	return ", by " + strings.Join(who, " and ")
}

// closeOut is the scene on one page.
func (m *maker) closeOut() Paper {
	parts := m.parts()
	name := "Close-out: no line is open"
	n := m.openLines(parts[0])
	if n > 0 {
		name = "Close-out with " + count(n, "OPEN LINE", "OPEN LINES")
	}
	out := m.paper("closeout", "", name, func(p *press) {
		p.page()
		p.para(bold, body, p.left, p.right-p.left, m.pic.ProofLine(""))
		p.y += 6
		const foot = 2 * signing
		width := (p.right - p.left - 18) / 2
		capacity := 2 * int((p.bottom-foot-p.y)/closeLeading)
		lines := fitted(p, parts, width, capacity)
		half := (len(lines) + 1) / 2
		if len(lines) <= capacity/2 {
			half = len(lines)
		}
		for half > 0 && half < len(lines) && lines[half-1].title { // no heading alone at the foot of a column
			half--
		}
		top := p.y
		for c, column := range [][]closeLine{lines[:half], lines[half:]} {
			p.y = top
			for _, l := range column {
				l.print(p, p.left+float64(c)*(width+18))
			}
		}
		p.y = p.bottom - foot
		p.signatures("Officer", "Staging", "Incident command", "Received at quarters")
	})
	out.Lines = n
	return out
}

const (
	closeSize    = 10.0
	closeLeading = 12.5
)

// A closeLine is one printed line of the close-out.
type closeLine struct {
	text         string
	title, start bool
}

func (l closeLine) print(p *press, x float64) {
	switch {
	case l.title:
		p.set(bold, closeSize+1.5)
	default:
		p.set(plain, closeSize)
		if l.start {
			p.show(x, p.y+closeSize, "–")
		}
		x += 9
	}
	p.show(x, p.y+closeSize, l.text)
	p.y += closeLeading
}

// fitted are the parts as printed lines, so few that they fit: the longest
// part gives way first, and says how many more there are and where.
func fitted(p *press, parts []part, width float64, capacity int) []closeLine {
	keep := make([]int, len(parts))
	for i := range parts {
		keep[i] = len(parts[i].lines)
	}
	wrapped := make([][][]string, len(parts))
	p.set(plain, closeSize)
	for i, pt := range parts {
		for _, l := range pt.lines {
			lines := p.wrap(p.draw(l), width-9)
			if len(lines) > 3 {
				lines = []string{lines[0], lines[1], p.cut(lines[2]+" "+lines[3], width-9)}
			}
			wrapped[i] = append(wrapped[i], lines)
		}
	}
	for {
		var out []closeLine
		longest := 0
		for i, pt := range parts {
			if keep[i] > keep[longest] {
				longest = i
			}
			if i > 0 {
				out = append(out, closeLine{})
			}
			out = append(out, closeLine{text: fmt.Sprintf("%s: %d", pt.title, len(pt.lines)), title: true})
			for _, lines := range wrapped[i][:keep[i]] {
				for k, text := range lines {
					out = append(out, closeLine{text: text, start: k == 0})
				}
			}
			if n := len(pt.lines) - keep[i]; n > 0 {
				out = append(out, closeLine{text: fmt.Sprintf("and %d more: see %s", n, pt.more), start: true})
			}
			if len(pt.lines) == 0 {
				out = append(out, closeLine{text: pt.empty})
			}
		}
		if len(out)+2 <= capacity || keep[longest] == 0 {
			return out
		}
		keep[longest]--
	}
}
