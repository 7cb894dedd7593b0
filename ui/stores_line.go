package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// linePage is one line of the inventory: all that is known of it, and what
// can be changed. Changes wait on the page until they are kept, by one entry.
// A line is never removed here.
type linePage struct {
	sh    *Shell
	id    string
	edits map[string]func(it *model.Item) // by what they change
	bad   []string                        // why the changes were not taken
	facts *parts.Label
	reads *parts.Scroller
	panel *parts.Panel
	grid  *parts.Grid
	views []parts.KeyView
	keep  *parts.Key
	root  *fyne.Container
}

func newLinePage(sh *Shell, id string) *linePage {
	p := &linePage{sh: sh, id: id, edits: map[string]func(*model.Item){}}
	p.facts = parts.NewLines(parts.LabelView{ID: "facts", Role: look.Lead})
	p.reads = parts.NewScroller(p.facts)
	p.panel = parts.NewPanel(parts.PanelView{}, p.reads)
	cell := func() fyne.Size { return cellFor(p.grid, len(p.views), 200, 96) }
	p.grid = parts.NewGrid(cell, func() fyne.CanvasObject {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { p.touched(k.View().ID) })
		return k
	}, func(i int, o fyne.CanvasObject) { o.(*parts.Key).Set(p.views[i]) })
	p.keep = parts.NewKey(parts.KeyView{}, p.kept)
	p.root = box(func(size fyne.Size) {
		gap, h := look.U(look.Gap), look.U(96)
		w := (size.Width - gap) / 2
		place(p.panel, 0, 0, w, size.Height)
		flush(p.grid, w+gap, 0, w, size.Height-h-gap)
		place(p.keep, w+gap, size.Height-h, w, h)
	}, p.panel, p.grid, p.keep)
	return p
}

func (p *linePage) body() fyne.CanvasObject { return p.root }

// draft is the line as it would be kept.
func (p *linePage) draft(n *now) model.Item {
	it := model.Item{ID: p.id}
	if is := n.s.Wanted().Item(p.id); is != nil {
		it = *is
	}
	for _, edit := range p.edits {
		edit(&it)
	}
	return it
}

// show brings the page up to date.
func (p *linePage) show(n *now) head {
	it := p.draft(n)
	top := parts.PanelView{Title: words.L("In the inventory"), Note: p.id, Rule: true}
	if len(p.edits) > 0 {
		top.Title = words.L("As it would be kept")
	}
	text := n.facts(&it)
	if len(p.bad) > 0 {
		text = parts.B(words.L("Nothing was changed.")+"\n"+strings.Join(p.bad, "\n")) + "\n\n" + text
		top.Tone, top.Title = parts.Alarm, words.L("Not kept")
	}
	p.panel.Set(top)
	p.facts.SetText(text)
	enlarge(p.panel, p.reads, p.facts)
	p.reads.Settle()
	if views := p.keys(n, &it); !sameKeys(views, p.views) {
		p.views = views
		p.grid.SetLen(len(views))
	}
	v := parts.KeyView{ID: "keep", Title: words.L("Keep the changes"), Second: words.F("%s, one entry of the log", words.N("%d change", "%d changes", len(p.edits))), Icon: "tick", Tone: parts.Filled, Lay: parts.LayLeft, Role: look.Name}
	if len(p.edits) == 0 {
		v = parts.KeyView{ID: "keep", Title: words.L("Nothing is changed"), Second: words.L("touch what is to be otherwise"), Off: true, Lay: parts.LayLeft, Role: look.Name}
	}
	p.keep.Set(n.shutKey(v))
	return head{title: it.Short(), sentence: n.slotWords(&it), mark: n.mark(it.Rig), back: true}
}

func sameKeys(a, b []parts.KeyView) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// keys are what can be changed.
func (p *linePage) keys(n *now, it *model.Item) []parts.KeyView {
	two := words.L("one can lift it")
	if it.TwoPerson {
		two = words.L("two people lift it")
	}
	short := it.ShortName
	if short == "" {
		short = words.L("none: the name stands")
	}
	out := []parts.KeyView{
		{ID: "name", Title: words.L("Name"), Second: it.Name}, {ID: "short", Title: words.L("Short name"), Second: short},
		{ID: "quantity", Title: words.L("Quantity"), Second: fmt.Sprint(it.Quantity)}, {ID: "least", Title: words.L("Least usable"), Second: leastWord(it)},
		{ID: "slot", Title: words.L("Slot"), Second: n.slotName(it.Slot)}, {ID: "two", Title: words.L("Lift"), Second: two},
	}
	if v, ok := n.markKey(it); ok {
		out = append(out, v)
	}
	for _, a := range it.Checks {
		if a.HasLimit {
			out = append(out, parts.KeyView{ID: "limit-" + a.Check, Title: words.F("%s limit", capital(a.Check)), Second: words.F("at least %g", a.Limit)})
		}
	}
	for i := range out {
		out[i].Lay, out[i].Role, out[i].Off = parts.LayLeft, look.TileName, n.readsOnly()
		if p.edits[out[i].ID] != nil {
			out[i].Tone, out[i].State = parts.Live, "changed"
		}
	}
	return out
}

func leastWord(it *model.Item) string {
	if it.LeastUsable == model.Blank {
		return words.L("all of them")
	}
	return fmt.Sprint(it.LeastUsable)
}

// slotName is a slot in words, without its rig.
func (n *now) slotName(id string) string {
	if s := n.s.Wanted().Slot(id); s != nil {
		return placeWord(s.Compartment) + ", " + s.Description
	}
	return words.L("no home yet")
}

// touched opens what changes one thing of the line.
func (p *linePage) touched(what string) {
	n := p.sh.now()
	it := p.draft(n)
	p.bad = nil
	set := func(edit func(*model.Item)) {
		p.edits[what] = edit
		p.sh.back()
	}
	switch check, limit := strings.CutPrefix(what, "limit-"); {
	case limit:
		p.sh.asOfficer(words.L("Limits"), func() { p.sh.open(newLimitPad(p.sh, p.id, check)) })
	case what == "name":
		p.sh.open(newWordPad(p.sh, words.F("Name of %s", it.ID), it.Name, 60, func(s string) { set(func(it *model.Item) { it.Name = s }) }))
	case what == "short":
		p.sh.open(newWordPad(p.sh, words.F("Short name of %s", it.ID), it.ShortName, 18, func(s string) { set(func(it *model.Item) { it.ShortName = s }) }))
	case what == "quantity":
		p.sh.open(newNumberPad(p.sh, words.F("Quantity of %s", low(it.Short())), parts.B(words.F("%d now.", it.Quantity))+"\n"+words.L("How many the rig owns. While some are out, a new quantity waits until all are home."), false,
			func(k int) { set(func(it *model.Item) { it.Quantity = k }) }))
	case what == "least":
		p.sh.open(newNumberPad(p.sh, words.F("Least usable of %s", low(it.Short())), parts.B(words.F("Now: %s.", leastWord(&it)))+"\n"+words.L("The fewest with which it is still ready. Leave it empty for all of them."), true,
			func(k int) { set(func(it *model.Item) { it.LeastUsable = k }) }))
	case what == "slot":
		p.sh.open(newSlotChoice(p.sh, it.Rig, func(id string) { set(func(it *model.Item) { it.Slot = id }) }))
	case what == "marks":
		p.sh.open(newMarks(p.sh, p.id))
	case what == "two":
		was := it.TwoPerson
		if p.edits[what] != nil {
			delete(p.edits, what)
		} else {
			p.edits[what] = func(it *model.Item) { it.TwoPerson = !was }
		}
		p.sh.refresh()
	}
}

// kept writes all changes as one entry.
func (p *linePage) kept() {
	if p.bad = p.sh.editItem(p.draft(p.sh.now())); len(p.bad) == 0 {
		p.edits = map[string]func(*model.Item){}
	}
	p.sh.refresh()
}

// facts is all that is known of a line.
func (n *now) facts(it *model.Item) string {
	var b strings.Builder
	fact := func(what, text string) {
		if text != "" {
			fmt.Fprintf(&b, "%s %s\n", parts.B(what+":"), text)
		}
	}
	if i := n.d.ItemIndex(it.ID); i >= 0 {
		where, _ := n.realWords(i)
		fact(words.L("Now"), where)
	}
	fact(words.L("Waits"), n.heldWord(it.ID))
	fact(words.L("Name"), it.Name)
	fact(words.L("Also called"), strings.Join(it.OtherNames, ", "))
	fact(words.L("Lives"), n.slotWords(it))
	fact(words.L("Quantity"), words.F("%d %s, usable from %s", it.Quantity, it.Unit, leastWord(it)))
	fact(words.L("Kind"), string(it.Kind))
	weight := pounds(it.WeightLb, it)
	if it.TwoPerson {
		weight += words.L(", two people")
	}
	if it.Extra[handUp] != "" {
		weight += words.L(", hand it up, never solo")
	}
	fact(words.L("Weight"), weight)
	fact(words.L("Mark"), it.Mark)
	fact(words.L("Checks"), strings.ReplaceAll(checkWords(it), " ", ", "))
	if it.Critical {
		fact(words.L("Critical"), words.F("counted on Glance as %s", n.familyWords(it)))
	}
	return strings.TrimSpace(b.String())
}

// familyWords names the family of a line, or the line where nothing else is of it.
func (n *now) familyWords(it *model.Item) string {
	var lines []int
	for i := range n.d.Items {
		if n.d.Items[i].Family == it.Family {
			lines = append(lines, i)
		}
	}
	if name := n.familyName(lines); name != "" {
		return low(name)
	}
	return low(it.Short())
}

// newSlotChoice chooses a slot of a rig.
func newSlotChoice(sh *Shell, rig string, done func(id string)) screen {
	g := &keyGrid{title: words.L("Slot"), sentence: words.L("Touch where it is to live"), mark: sh.now().mark(rig)}
	g.keys = func(n *now) (out []parts.KeyView) {
		for _, s := range n.s.Wanted().Slots {
			if s.Rig == rig {
				out = append(out, parts.KeyView{ID: "slot-" + s.ID, Title: capital(placeWord(s.Compartment)), Second: s.Description, Lay: parts.LayLeft})
			}
		}
		return append(out, parts.KeyView{ID: "slot-", Title: words.L("No home yet"), Lay: parts.LayLeft})
	}
	g.touched = func(id string) { done(strings.TrimPrefix(id, "slot-")) }
	return g.made()
}
