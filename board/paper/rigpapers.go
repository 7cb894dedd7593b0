package paper

import (
	"cmp"
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/code"
	"tarpside/model/loadup"
)

// A door is a compartment on the walk round a rig, with its slots.
type door struct {
	lap         int
	compartment string
	side        string
	slots       []*model.Slot
}

func (d door) String() string {
	return fmt.Sprintf("Door %d: %s", d.lap, d.compartment) + sideWords(d.side)
}

func sideWords(side string) string {
	switch side {
	case "":
		return ""
	case "left":
		return ", driver side"
	case "right":
		return ", officer side"
	}
	return ", " + side
}

// doors are those of a rig in the order of the lap.
func (m *maker) doors(rig string) (out []door) {
	for i := range m.d.Slots {
		s := &m.d.Slots[i]
		if s.Rig != rig {
			continue
		}
		at := slices.IndexFunc(out, func(d door) bool { return d.lap == s.Lap && d.compartment == s.Compartment })
		if at < 0 {
			at = len(out)
			out = append(out, door{lap: s.Lap, compartment: s.Compartment, side: s.Side})
		}
		out[at].slots = append(out[at].slots, s)
	}
	slices.SortStableFunc(out, func(a, b door) int {
		return cmp.Or(cmp.Compare(a.lap, b.lap), strings.Compare(a.compartment, b.compartment))
	})
	for _, d := range out {
		slices.SortStableFunc(d.slots, func(a, b *model.Slot) int { return cmp.Compare(b.Depth, a.Depth) })
	}
	return out
}

// slots is what lives where on a rig, door by door.
func (m *maker) slots(rig string) Paper {
	return m.paper("slots", rig, "Slot sheets", func(p *press) {
		columns := []column{{tick: true}, {title: "qty", share: 0.7, right: true}, {title: "piece", share: 4.6}, {title: "id", share: 1.5}, {title: "lift", share: 1.2, bold: true}}
		doors := m.doors(rig)
		for _, d := range doors {
			p.section(d.String(), 3*box+40)
			var rows []row
			for _, s := range d.slots {
				rows = append(rows, row{span: slotWords(s)})
				rows = append(rows, m.living(rig, s.ID)...)
			}
			p.list(columns, rows)
		}
		if rows := m.living(rig, ""); len(rows) > 0 {
			p.section("Pieces without a slot in the tables", 2*box+20)
			p.list(columns, rows)
		} else if len(doors) == 0 {
			p.say("The tables list no slot and no piece of it.")
		}
	})
}

func slotWords(s *model.Slot) string {
	text := s.ID
	if s.Description != "" {
		text += "  " + s.Description
	}
	if s.Depth > 0 {
		text += fmt.Sprintf(", %d deep", s.Depth)
	}
	return text
}

// living are the rows of a slot, kits with what lives in them; of slot "" all
// whose slot is in no table.
func (m *maker) living(rig, slot string) (rows []row) {
	var lines []int
	for i := range m.d.Items {
		it := &m.d.Items[i]
		at := it.Slot
		if s := m.d.Slot(at); s == nil || s.Rig != rig {
			at = ""
		}
		if it.Rig == rig && m.d.Item(it.Kit) == nil && at == slot {
			lines = append(lines, i)
		}
	}
	slices.SortStableFunc(lines, func(a, b int) int { return cmp.Compare(m.d.Items[a].Order, m.d.Items[b].Order) })
	var add func(line int, deep bool)
	add = func(line int, deep bool) {
		it := &m.d.Items[line]
		lift := ""
		if m.s.TwoPerson(line) {
			lift = "2 people"
		}
		rows = append(rows, row{cells: []string{"", strconv.Itoa(it.Quantity), it.Name, it.ID, lift}, deep: deep})
		for _, i := range m.d.Inside(line) {
			add(i, true)
		}
	}
	for _, i := range lines {
		add(i, false)
	}
	return rows
}

// putBack is the load order of a rig, door by door.
func (m *maker) putBack(rig string) Paper {
	return m.paper("putback", rig, "Put back", func(p *press) {
		columns := []column{{tick: true}, {title: "step", share: 0.7, right: true}, {title: "qty", share: 0.7, right: true},
			{title: "piece", share: 4}, {title: "slot", share: 1.7}, {title: "lb each", share: 1, right: true}, {title: "who lifts", share: 1.7, bold: true, line: true}}
		t := m.pic.LoadUp(rig)
		var rows []row
		lap := ""
		cells(t, func(c func(string) string) {
			if at := c("lap") + " " + c("compartment"); at != lap {
				lap = at
				rows = append(rows, row{span: m.doorOf(c("slot"), c("lap"), c("compartment"))})
			}
			lift, name := "", c("name")
			if c("two_person") == "yes" {
				lift = "2 people"
			}
			if by := m.closedBy(c("item")); by != "" {
				name += ". In the way, take out first: " + by
			}
			rows = append(rows, row{cells: []string{"", c("step"), c("quantity"), name, c("slot"), c("weight_lb_with_contents"), lift}})
		})
		p.page()
		if len(rows) == 0 {
			p.say("Nothing of it is on the tarp.")
		} else {
			p.say("In this order, once round the rig, opens each door as seldom as can be. Tick what is in its slot.")
			p.y += 4
			p.list(columns, rows)
		}
		if n := len(m.pic.Leaving(rig).Rows) - len(t.Rows); n > 0 {
			p.y += 6
			p.say(fmt.Sprintf("%s not on the tarp: see its open list.", count(n, "line is", "lines are")))
		}
		p.y += 4
		p.signatures("Driver", "Second pair of eyes")
	})
}

func (m *maker) doorOf(slot, lap, compartment string) string {
	text := "Door " + lap + ": " + compartment
	if s := m.d.Slot(slot); s != nil {
		text += sideWords(s.Side)
	}
	return text
}

// closedBy names what keeps the slot of an item closed now.
func (m *maker) closedBy(item string) string {
	var names []string
	for _, id := range loadup.ClosedBy(m.s, m.d.ItemIndex(item)) {
		if it := m.d.Item(id); it != nil {
			names = append(names, it.Short())
		}
	}
	return strings.Join(names, ", ")
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// open is what a rig that goes now does not have, to be signed.
func (m *maker) open(rig string) Paper {
	t := m.pic.Leaving(rig)
	name := "Open list, " + count(len(t.Rows), "line", "lines")
	out := m.paper("open", rig, name, func(p *press) {
		columns := []column{{tick: true}, {title: "qty", share: 0.7, right: true}, {title: "piece", share: 3.6}, {title: "id", share: 1.4}, {title: "where", share: 3}}
		p.page()
		var rows []row
		cells(t, func(c func(string) string) {
			rows = append(rows, row{cells: []string{"", c("quantity"), c("name"), c("item"), m.place(c("where"))}})
		})
		if len(rows) == 0 {
			p.say("Nothing is open: all of it is home, or was used.")
		} else {
			p.list(columns, rows)
		}
		m.openToo(p, "Carried for others", columns, m.carried(rig))
		columns[4].title = "what is the matter"
		m.openToo(p, "Aboard, but not as it should be", columns, m.unfit(rig))
		p.y += 6
		p.say("Leaving is signed, never refused: who signs has seen this list.")
		p.signatures("Officer of the rig", "Driver", "Staging")
	})
	out.Lines = len(t.Rows)
	return out
}

func (m *maker) openToo(p *press, title string, columns []column, rows []row) {
	if len(rows) > 0 {
		p.section(title, 2*box+20)
		p.list(columns, rows)
	}
}

// carried is what rides on a rig that does not own it.
func (m *maker) carried(rig string) (rows []row) {
	cells(m.pic.BringBack(), func(c func(string) string) {
		if c("where") == string(model.Riding)+":"+rig {
			rows = append(rows, row{cells: []string{"", c("quantity"), c("name"), c("item"), "belongs to " + m.rigName(c("rig"))}})
		}
	})
	return rows
}

// unfit is what of a rig is home, but out of service or not ready.
func (m *maker) unfit(rig string) (rows []row) {
	for _, r := range m.s.EndState() {
		if it := &m.d.Items[r.Line]; it.Rig == rig && (r.Place.Kind == model.Home || r.Place.Kind == model.InKit) {
			rows = append(rows, row{cells: []string{"", strconv.Itoa(r.Quantity), it.Name, it.ID, answered(r.Words)}})
		}
	}
	return rows
}

// release is the slip that is read over the radio when a rig is called away:
// what it leaves behind, place by place.
func (m *maker) release(rig string) Paper {
	return m.paper("release", rig, "Release slip", func(p *press) {
		t := m.pic.Leaving(rig)
		slip := slipNumber(rig, t)
		p.page()
		p.para(bold, title, p.left, p.right-p.left, "Slip "+slip)
		p.say("Read it over the radio, one line at a time. Who hears it reads the number and each line back; tick it then.")
		p.y += 4
		var places []string
		lines := map[string][]string{}
		cells(t, func(c func(string) string) {
			at := c("where")
			if lines[at] == nil {
				places = append(places, at)
			}
			lines[at] = append(lines[at], some(m.d.Item(c("item")), atoi(c("quantity"))))
		})
		slices.Sort(places)
		if len(places) == 0 {
			p.para(bold, heading, p.left, p.right-p.left, "It leaves nothing behind.")
		}
		for _, at := range places {
			p.section(upper(m.place(at)), box+10)
			m.aloud(p, lines[at])
		}
		var carried []string
		for _, r := range m.carried(rig) {
			carried = append(carried, some(m.d.Item(r.cells[3]), atoi(r.cells[1]))+", "+r.cells[4])
		}
		if len(carried) > 0 {
			p.section("It takes along for others", box+10)
			m.aloud(p, carried)
		}
		p.y += 6
		p.signatures("Read by", "Heard and read back by")
	})
}

// aloud prints lines in large type, each with a box.
func (m *maker) aloud(p *press, lines []string) {
	const most = 4
	x, width := p.left+box+10, p.right-p.left-box-10
	for _, l := range lines {
		p.room(p.tall(plain, heading, width, l, most) + 8)
		p.tick(p.left, p.y)
		y := p.y
		p.y += 2
		p.lines(plain, heading, x, width, l, most)
		p.y = max(p.y, y+box) + 6
	}
}

// slipNumber is the number that two ends of a radio compare: four figures
// made from what the slip says, and Damm's check digit.
func slipNumber(rig string, t board.Table) string {
	h := sha256.Sum256([]byte(rig + fmt.Sprintf("%q", t.Rows)))
	n := fmt.Sprintf("%04d", binary.BigEndian.Uint32(h[:])%10000)
	check, err := code.Damm(n)
	if err != nil {
		panic(err) // four figures
	}
	return n + "-" + string(check)
}

func atoi(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil {
		panic(err) // our own table
	}
	return n
}

// upper makes the first letter a capital.
func upper(text string) string {
	for i, r := range text {
		return strings.ToUpper(string(r)) + text[i+len(string(r)):]
	}
	return text
}
