package paper

import (
	"fmt"
	"strings"

	"tarpside/model/sum"
	"tarpside/model/trail"
)

// slips are what each of the party carries, a page for each: to tick when it is
// in the pack, at the patient and before the walk back.
func (m *maker) slips(party *trail.Party) Paper {
	return m.paper("trail-slips", "", "Trail slips", func(p *press) {
		_, lines := party.Lines(m.s)
		load := trail.Packs(lines, party.Carriers(m.d))
		columns := []column{{title: "in", tick: true}, {title: "qty", share: 0.6, right: true}, {title: "piece", share: 4, bold: true}, {title: "of", share: 0.7},
			{title: "lb", share: 0.8, right: true}, {title: "", share: 1.6}, {title: "at", tick: true}, {title: "bk", tick: true}}
		for _, pack := range load.Packs {
			p.page()
			p.section(pack.Name+": "+m.packWords(pack), 6*writing)
			p.say("Tick at the rig when it is in the pack, at the patient, and before the walk back. What walks in walks out beside the patient.")
			p.y += 4
			var rows []row
			for _, x := range pack.Parts {
				l := lines[x.Line]
				shared := ""
				if x.Shared > 1 {
					shared = fmt.Sprintf("carried by %d", x.Shared)
				}
				rows = append(rows, row{cells: []string{"", fmt.Sprint(x.N), l.Name, l.Rig, sum.Say(x.Lb, 1), shared, "", ""}})
			}
			if len(rows) > 0 {
				p.list(columns, rows)
			} else {
				p.say("Nothing to carry.")
			}
			p.y += 8
			p.signatures("Seen at the rig by", "and by")
		}
	})
}

// packWords is what one carries against the limit: the load rounded up, the
// limit down.
func (m *maker) packWords(p trail.Pack) string {
	words := []string{fmt.Sprintf("%d lb, limit %d lb", trail.UpLb(p.Lb), trail.DownLb(p.Limit()))}
	if over := p.Over(); over > 0 {
		words = append(words, fmt.Sprintf("over by %d lb", trail.UpLb(over)))
	}
	if p.Guessed {
		words = append(words, "the usual limit")
	}
	return strings.Join(words, ", ")
}
