package ui

import (
	"strconv"

	"tarpside/model"
	"tarpside/model/rundown"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// mostDigits is how many digits a reading may be typed with: one more than any
// gauge has, so that a finger too many is told of.
const mostDigits = 5

// digit takes one key of the pad.
func (r *runningScreen) digit(c *runningRow, key string) {
	switch {
	case c.figure == nil:
	case key == "delete":
		r.typed = r.typed[:max(len(r.typed)-1, 0)]
	case key != "done":
		if len(r.typed) < mostDigits {
			r.typed += key
		}
	case r.refusal(c.figure) != "":
	case c.figure.Check == "oxygen":
		r.pad, r.flow = false, true
	default:
		r.log(c, "")
	}
}

// refusal says why what is typed cannot be, "" if it can.
func (r *runningScreen) refusal(f *rundown.Figure) string {
	if r.typed == "" {
		return words.L("Type what the gauge shows. A blank is no reading.")
	}
	x, err := strconv.ParseFloat(r.typed, 64)
	if err == nil {
		err = rundown.Refuse(r.n.d, &r.n.d.Items[f.Line], f.Check, x)
	}
	if err != nil {
		return capital(words.Said(err.Error()))
	}
	return ""
}

// padSide is the pad for a reading, with its verdict beside it.
func (r *runningScreen) padSide(f *rundown.Figure) node {
	n, it := r.n, &r.n.d.Items[f.Line]
	no := r.refusal(f)
	v := leadView{id: "amount", title: n.d.Check(f.Check).Question, line: it.Short(), mark: n.mark(it.Rig)}
	says := leadView{id: "verdict", title: words.L("It can be"), under: words.L("Done logs it. Nothing is moved.")}
	switch {
	case r.typed == "":
		says = leadView{id: "verdict", title: words.L("Blank"), under: no}
	case no != "":
		says = leadView{id: "verdict", tone: parts.Alarm, title: words.L("Cannot be"), under: no}
	}
	out := n.padNode(v, r.typed, says, no == "")
	return out
}

// flows are the flows that a regulator is usually set to, in litres a minute.
var flows = []string{"2", "4", "6", "8", "10", "12", "15", "25"}

// flowSide asks for the flow.
func (r *runningScreen) flowSide(c *runningRow) node {
	v := leadView{id: "piece", title: words.L("What flow is set?"), line: words.F("%s, %s psi", r.n.d.Items[c.line].Short(), r.typed), under: words.L("Litres a minute, as the regulator shows")}
	var kids []node
	for i := 0; i < len(flows); i += 4 {
		var keys []node
		for _, f := range flows[i : i+4] {
			keys = append(keys, keyNode(parts.KeyView{ID: "flow-" + f, Title: f, Lay: parts.LayCentre, Role: look.Place}))
		}
		kids = append(kids, row(0, keys...))
	}
	none := row(96, keyNode(parts.KeyView{ID: "no-flow", Title: words.L("Not known"), Second: words.L("only the pressure is logged"), Lay: parts.LayCentre}),
		keyNode(parts.KeyView{ID: "flow-0", Title: words.L("Nothing flows"), Lay: parts.LayCentre}),
		keyNode(parts.KeyView{ID: "later", Title: words.L("Drop it"), Second: words.L("nothing is logged"), Lay: parts.LayCentre}))
	return col(0, append(append([]node{sized(node{id: "piece", view: v}, 130)}, kids...), none)...)
}

// snooze is a piece that is out long and was said to be in order.
type snooze struct {
	until int64 // Unix ms
	why   string
}

// snoozeMinutes is for how long such a piece is not told of on this tablet.
const snoozeMinutes = 30

// reasons why a piece may be out long.
var reasons = []struct{ id, title string }{
	{"at-work", words.K("Still at work")}, {"seen", words.K("Seen, and in order")}, {"officer", words.K("An officer knows")},
}

// waveSide asks why it is in order.
func (r *runningScreen) waveSide(c *runningRow) node {
	v := leadView{id: "piece", title: words.L("Why is it in order?"), line: r.n.d.Items[c.line].Short() + ", " + r.n.placeName(c.place),
		under: words.F("This tablet is quiet about it for %d min, or until something of it is logged", snoozeMinutes)}
	kids := []node{sized(node{id: "piece", view: v}, 150)}
	for _, w := range reasons {
		kids = append(kids, sized(keyNode(parts.KeyView{ID: "why-" + w.id, Title: words.L(w.title), Lay: parts.LayLeft, Role: look.Group}), look.Floor))
	}
	kids = append(kids, sized(keyNode(parts.KeyView{ID: "later", Title: words.L("Not now"), Icon: "back", Lay: parts.LayLeft}), look.Floor))
	return col(0, append(kids, node{})...)
}

func (r *runningScreen) snooze(c *runningRow, why string) {
	for _, w := range reasons {
		if w.id == why {
			if r.sh.snoozed == nil {
				r.sh.snoozed = map[string]snooze{}
			}
			r.sh.snoozed[r.n.d.Items[c.line].ID] = snooze{r.n.at.UnixMilli() + snoozeMinutes*60000, low(words.L(w.title))}
		}
	}
	r.wave = false
}

// longs are the pieces that are out long and were not said to be in order.
func (n *now) longs(figures []rundown.Figure) []rundown.Long {
	var out []rundown.Long
	for _, o := range rundown.Longs(n.s, n.pic.Entries, n.scene.ID, n.at.UnixMilli(), n.sumSettings().run, figures) {
		if s, ok := n.snoozed[n.d.Items[o.Line].ID]; !ok || s.until <= n.at.UnixMilli() || o.Since > s.until-snoozeMinutes*60000 {
			out = append(out, o)
		}
	}
	return out
}

// longWords name the piece that is furthest over its time, and count the rest.
func (n *now) longWords(figures []rundown.Figure) string {
	all := n.longs(figures)
	if len(all) == 0 {
		return ""
	}
	o := &all[0]
	text := words.F("Out long. %s", words.Said(o.Words(n.d.Items[o.Line].Short(), n.placeName(o.Place))))
	if len(all) > 1 {
		text += words.N(", and %d piece more", ", and %d pieces more", len(all)-1)
	}
	return text
}

// refuse says in words why a number cannot be a reading of a piece, "" if it
// can.
func (n *now) refuse(it *model.Item, check string, number float64) string {
	if err := rundown.Refuse(n.d, it, check, number); err != nil {
		return capital(words.Said(err.Error())) + "."
	}
	return ""
}
