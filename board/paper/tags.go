package paper

import (
	"strings"

	"tarpside/model"
)

// tags are the labels that are tied to what is out of service, six on a page.
func (m *maker) tags() Paper {
	return m.paper("tags", "", "Out-of-service labels", func(p *press) {
		var tagged []model.Disposition
		for _, r := range m.s.EndState() {
			if strings.Contains(r.Words, "out of service") {
				tagged = append(tagged, r)
			}
		}
		if len(tagged) == 0 {
			p.page()
			p.say("Nothing is out of service.")
			return
		}
		const across, down, between = 2, 3, 10.0
		for n, r := range tagged {
			if n%(across*down) == 0 {
				p.page()
			}
			w := (p.right - p.left - between) / across
			h := (p.bottom - p.top - between*(down-1)) / down
			k := n % (across * down)
			m.tag(p, r, p.left+float64(k%across)*(w+between), p.top+float64(k/across)*(h+between), w, h)
		}
	})
}

// tag prints one label with its corner at x, y.
func (m *maker) tag(p *press, r model.Disposition, x, y, w, h float64) {
	it := &m.d.Items[r.Line]
	p.SetLineWidth(2)
	p.Rect(x, y, w, h, "D")
	p.SetLineWidth(0.8)
	p.SetFillColor(0, 0, 0)
	p.Rect(x, y, w, 34, "F")
	p.SetTextColor(255, 255, 255)
	p.set(bold, title)
	p.show(x+10, y+25, "OUT OF SERVICE")
	p.SetTextColor(0, 0, 0)
	p.Circle(x+w-18, y+17, 7, "FD") // where the string goes through
	p.SetFillColor(255, 255, 255)
	p.Circle(x+w-18, y+17, 6, "F")
	p.y = y + 40
	in, width := x+10, w-20
	p.lines(bold, 18, in, width, some(it, r.Quantity), 2)
	p.lines(plain, body, in, width, it.ID+" · "+m.rigName(it.Rig), 1)
	fault := answered(r.Words)
	if _, behind, ok := strings.Cut(fault, "out of service: "); ok {
		fault = behind
	}
	if r.Place.Kind == model.Bagged {
		fault = "Sealed and contaminated: to the laundry"
	}
	p.lines(bold, heading, in, width, "Fault: "+fault, 3)
	if e := m.tagEntry(it.ID); e != nil {
		p.lines(plain, body, in, width, m.members(e.By)+", "+m.day(e.At()), 1)
	}
	p.y = y + h - writing - 16
	p.sign(in, width, "In service again: name, date")
}

// tagEntry is the last entry that took an item out of service, nil if the log
// of that scene is not open any more.
func (m *maker) tagEntry(item string) *model.Entry {
	for i := len(m.pic.Entries) - 1; i >= 0; i-- {
		e := &m.pic.Entries[i]
		if e.Item == item && e.Taken() && (e.Verb == model.Tag || e.Verb == model.Bag || e.Verdict != nil && e.Verdict.Tagged) {
			return e
		}
	}
	return nil
}
