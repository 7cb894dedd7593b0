package paper

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
)

// tarp is the sheet for when the tablet dies: what lies there now, and lines
// to write on.
func (m *maker) tarp() Paper {
	return m.paper("tarp", "", "Tarp sheet", func(p *press) {
		columns := []column{{title: "back", tick: true}, {title: "qty", share: 0.7, right: true}, {title: "piece", share: 4}, {title: "rig", share: 0.8},
			{title: "where", share: 2.6}, {title: "who has it", share: 1.8}}
		var rows []row
		lying, out := 0, 0
		cells(m.pic.Glance(), func(c func(string) string) {
			switch at := c("place"); {
			case strings.HasPrefix(at, string(model.Tarp)):
				lying++
			case strings.HasPrefix(at, string(model.At)+":"):
				out++
			default:
				return
			}
			rows = append(rows, row{cells: []string{"", c("quantity"), c("name"), c("rig"), m.place(c("place")), m.members(c("holder"))}})
		})
		p.page()
		p.say(fmt.Sprintf("When the tablet dies, go on here. When this was printed %s on the tarp and %d out at the scene.", count(lying, "line lay", "lines lay"), out))
		p.y += 4
		if len(rows) > 0 {
			p.list(columns, rows)
		}
		p.section("From here on by hand", 6*writing)
		m.blank(p)
		p.page()
		m.blank(p)
	})
}

// blank fills the page with lines to write on.
func (m *maker) blank(p *press) {
	columns := []column{{title: "time", share: 1}, {title: "qty", share: 0.8}, {title: "piece", share: 4}, {title: "rig", share: 1},
		{title: "where to, or back", share: 2.4}, {title: "who", share: 1.6}, {title: "in log", tick: true}}
	x, w := p.columns(columns)
	p.set(bold, small)
	for i, c := range columns {
		p.show(x[i], p.y+small, c.title)
	}
	p.y += small + 4
	first := p.y
	for p.y+writing <= p.bottom {
		p.tick(x[len(x)-1], p.y+5)
		p.y += writing
		p.Line(p.left, p.y, p.right, p.y)
	}
	p.SetLineWidth(0.3)
	for i := range x[:len(x)-1] {
		p.Line(x[i]+w[i]+gap/2, first, x[i]+w[i]+gap/2, p.y)
	}
	p.SetLineWidth(0.8)
}

// restock is what to replace and what to order.
func (m *maker) restock() Paper {
	return m.paper("restock", "", "Restock and order", func(p *press) {
		columns := []column{{title: "done", tick: true}, {title: "what", share: 3.4, bold: true}, {title: "of", share: 1.6}, {title: "replace", share: 1, right: true},
			{title: "from store", share: 1.3, right: true}, {title: "store left", share: 1.2, right: true}, {title: "owed", share: 0.8, right: true}, {title: "order", share: 1.5, bold: true}}
		var rows []row
		cells(m.pic.Restock(), func(c func(string) string) {
			order := ""
			switch c("action") {
			case "ORDER":
				order = c("order_qty_in_packs_of_pack")
			case "no stock line":
				order = "not in the store"
			}
			rows = append(rows, row{cells: []string{"", c("name"), c("by_rig"), c("total_to_replace"), c("issue_from_station"), c("station_after"), nought(c("backorder")), order}})
		})
		p.page()
		if len(rows) == 0 {
			p.say("Nothing is to be replaced.")
			return
		}
		p.list(columns, rows)
		p.y += 8
		p.signatures("Restocked by", "Ordered by")
	})
}

func nought(figure string) string {
	if figure == "0" {
		return ""
	}
	return figure
}

// lost is a report for each line that an officer closed the search for.
func (m *maker) lost() Paper {
	return m.paper("lost", "", "Lost reports", func(p *press) {
		for _, r := range m.s.Books() {
			if r.Place.Kind == model.Lost {
				p.page()
				m.report(p, r)
			}
		}
		if p.PageNo() == 0 {
			p.page()
			p.say("Nothing is lost.")
		}
	})
}

func (m *maker) report(p *press, r model.PlaceRow) {
	it := &m.d.Items[r.Line]
	p.lines(bold, title, p.left, p.right-p.left, some(it, r.Quantity), 3)
	for _, f := range [][2]string{{"Id", it.ID}, {"Belongs to", m.rigName(it.Rig)}, {"Mark", it.Mark}, {"How many lost", fmt.Sprintf("%d of %d", r.Quantity, it.Quantity)}, {"Slot", it.Slot}, {"Kit", it.Kit}} {
		if f[1] != "" {
			p.say(f[0] + ": " + f[1])
		}
	}
	p.section("What the log has of it", 2*box+20)
	rows := m.history(it.ID)
	if len(rows) == 0 {
		p.say("Nothing in the scenes that are open: it was lost in an earlier one.")
	} else {
		p.list([]column{{title: "time", share: 1}, {title: "who", share: 2}, {title: "what", share: 5}}, rows)
	}
	p.y += 8
	p.room(3 * signing)
	for _, w := range []string{"Where it may be, and where was looked", "Told to", "Replaced by"} {
		p.sign(p.left, p.right-p.left, w)
		p.y += signing
	}
	p.signatures("Officer who closed the search", "Received by")
}

// history is every entry that moved an item or looked for it.
func (m *maker) history(item string) (rows []row) {
	for i := range m.pic.Entries {
		e := &m.pic.Entries[i]
		moved := slices.ContainsFunc(e.Moves, func(v model.Move) bool { return v.Item == item })
		if !e.Taken() || !moved && (e.Item != item || e.Verb != model.Look && e.Verb != model.StopLook) {
			continue
		}
		what := m.happened(e)
		if e.Item != item { // it went along with something
			what = e.Reply.Text
		}
		rows = append(rows, row{cells: []string{m.clock(e.At()), m.members(e.By), upper(what)}})
	}
	return rows
}

// activity is the log of what was notable, with the fields of the ICS 214.
func (m *maker) activity() Paper {
	return m.paper("activity", "", "Activity log", func(p *press) {
		p.page()
		p.para(plain, small, p.left, p.right-p.left, "Has the fields of ICS 214, Activity Log, a public domain form of NIMS (FEMA 502-2); the layout is our own. No patient's name or condition belongs here.")
		p.y += 4
		log, hands := m.notable()
		period := ""
		if from := m.scene.Opened; from > 0 {
			period = "from " + m.day(from) + " to " + m.day(m.lastAct(from))
		}
		staging, position, unit := m.members(m.scene.Staging), "Staging", ""
		if who := m.d.Member(m.scene.Staging); who != nil {
			unit = m.unit(who)
		}
		for _, f := range [][2]string{{"1. Incident name", m.sceneName()}, {"2. Operational period", period},
			{"3. Name", staging}, {"4. ICS position", position}, {"5. Home agency and unit", unit}} {
			p.para(bold, small, p.left, p.right-p.left, f[0])
			p.lines(plain, body, p.left+10, p.right-p.left-10, f[1], 3)
			p.y += 3
		}
		p.section("6. Resources assigned", 2*box+20)
		if len(hands) == 0 {
			p.say("Nobody is named in the log.")
		} else {
			p.list([]column{{title: "name", share: 2}, {title: "ICS position, or role", share: 2.4}, {title: "home agency and unit", share: 2.6}}, hands)
		}
		p.section("7. Activity log", 2*box+20)
		if len(log) == 0 {
			p.say("Nothing was logged.")
		} else {
			p.list([]column{{title: "date and time", share: 1.5}, {title: "notable activities", share: 5.5}}, log)
		}
		p.y += 8
		p.say("8. Prepared by")
		p.signatures("Prepared by", "Position or title")
	})
}

// lastAct is when the scene was last acted in, Unix ms.
func (m *maker) lastAct(since int64) int64 {
	for i := range m.pic.Entries {
		if e := &m.pic.Entries[i]; m.s.Scene(e.Scene) == m.scene {
			since = max(since, e.At())
		}
	}
	return since
}

func (m *maker) unit(who *model.Member) string {
	text := who.Agency
	if a := m.d.Agency(who.Agency); a != nil {
		text = a.Name
	}
	if who.Rig != "" {
		text += ", " + m.rigName(who.Rig)
	}
	return text
}

// notable are the entries of the scene that a log is kept for, and who is
// named in any. Pieces that only went out and came back are told by a number.
func (m *maker) notable() (log, hands []row) {
	var named []string
	plainMoves := 0
	for i := range m.pic.Entries {
		e := &m.pic.Entries[i]
		if !e.Taken() || m.s.Scene(e.Scene) != m.scene || e.Verb == model.Stores || e.Verb == model.BlankNote {
			continue
		}
		for _, id := range append(strings.Split(e.Holder, "+"), e.By) {
			if who := m.d.Member(id); who != nil && !slices.Contains(named, id) {
				named = append(named, id)
			}
		}
		if !isNotable[e.Verb] {
			plainMoves++
			continue
		}
		what := upper(m.happened(e))
		if by := m.members(e.By); by != "" {
			what += ". " + by
		}
		log = append(log, row{cells: []string{m.day(e.At()), what}})
	}
	if plainMoves > 0 {
		log = append(log, row{cells: []string{"", "Pieces off, out, counted, checked and back: " + count(plainMoves, "entry", "entries") + " more, in the log of the board"}})
	}
	slices.Sort(named)
	for _, id := range named {
		who := m.d.Member(id)
		hands = append(hands, row{cells: []string{who.Name, who.Role, m.unit(who)}})
	}
	return log, hands
}

var isNotable = map[model.Verb]bool{model.Open: true, model.Arrive: true, model.Note: true, model.Relieve: true, model.ClearUp: true,
	model.Close: true, model.Handover: true, model.Lend: true, model.Bag: true, model.Tag: true, model.Override: true, model.Settle: true,
	model.StopLook: true, model.Release: true, model.Accept: true, model.Leave: true, model.Vouch: true, model.Use: true,
	model.BringBack: true, model.Repair: true, model.Found: true}

// happened tells an entry in words.
func (m *maker) happened(e *model.Entry) string {
	name := e.Item
	if it := m.d.Item(e.Item); it != nil {
		name = some(it, max(1, e.Quantity))
	}
	of := m.rigName(e.Rig)
	if a := m.d.Agency(e.Rig); a != nil {
		of = a.Name
	}
	said := func(head string) string {
		for _, more := range []string{answered(e.Reading), e.Note} {
			if more != "" {
				head += ": " + more
			}
		}
		return head
	}
	switch e.Verb {
	case model.Open:
		return said("scene opened")
	case model.Note:
		return said("note")
	case model.Arrive:
		return said(of + " arrived")
	case model.Relieve:
		return m.members(e.Holder) + " took over staging"
	case model.ClearUp:
		return "clear-up began"
	case model.Close:
		return "scene closed"
	case model.Release:
		return of + " wants to go"
	case model.Leave:
		return of + " left"
	case model.Accept:
		return "signed for what " + of + " leaves"
	case model.Vouch:
		return "driver's word that all of " + of + " is aboard"
	case model.Tag:
		return said("out of service, " + name)
	case model.Override:
		return said("officer let pass, " + name)
	case model.Look:
		step, _, _ := strings.Cut(strings.TrimPrefix(e.Reading, "step="), ";")
		return strings.TrimSuffix("looked for "+name+": "+step+". "+e.Note, ". ")
	case model.StopLook:
		return said("search closed, lost, " + name)
	case model.Repair:
		return said("in service again, " + name)
	}
	if e.Reply.Text != "" {
		return e.Reply.Text
	}
	return said(strings.ReplaceAll(string(e.Verb), "_", " ") + " " + name)
}
