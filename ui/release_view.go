package ui

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
	"tarpside/model/rundown"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// releaseRow is a line of a rig that must go, at one place of the scene.
type releaseRow struct {
	Item   string
	Key    string // item and place: a line can lie at two
	Name   string
	Where  string
	N      int // there
	Grab   int // of these go along
	Counts bool
}

// releaseView is the release of one rig, as values.
type releaseView struct {
	Rig, Name   string
	Stays       string // the rig that the rest is left with, "" if there is none
	StaysName   string
	Rows        []releaseRow
	Elsewhere   []string
	Chocks      chocksView
	Without     []string
	Radio       string // to be read aloud as it stands
	Released    int64  // when it was signed, Unix ms; 0 if not
	ReleasedBy  string
	Left        bool
	LeftAt      int64
	Accepted    bool
	AcceptedBy  string
	LinesOut    int
	PiecesOut   int
	GrabLines   int
	LeaveLines  int
	LeavePieces int
}

// chocksView asks for the wheel chocks: they are on neither list, because
// nobody logs them.
type chocksView struct {
	Says   string
	Answer string // "", yes, no
	Home   int    // pieces that the log has in their slot
}

// split is what a person chose on this tablet: how many of a row go along.
type split struct {
	grab   map[string]int
	chocks string
	stays  string
	row    string // the counted row that one fewer and one more are about
	signed bool   // the release was signed on this tablet: the sides stand
	stay   string // of the rig at a scene, which it is for
}

// releaseOf makes the view of a rig and what was chosen.
func (n *now) releaseOf(rig string, c *split) releaseView {
	v := releaseView{Rig: rig, Name: n.rigName(rig), Stays: n.staysWith(rig, c.stays)}
	if v.Stays != "" {
		v.StaysName = n.rigName(v.Stays)
	}
	n.signed(&v)
	for _, r := range n.s.Leaving(rig) {
		it := &n.d.Items[r.Line]
		switch r.Place.Kind {
		case model.Tarp, model.At:
			if r.Place.Ground == n.scene.Ground {
				v.Rows = append(v.Rows, n.releaseRow(r, c, v.Left))
			} else {
				v.Elsewhere = append(v.Elsewhere, words.F("%s at another scene", some(it, r.Quantity)))
			}
		case model.With, model.Riding:
			v.Elsewhere = append(v.Elsewhere, words.F("%s with %s", some(it, r.Quantity), n.partyName(r.Place.Name)))
		case model.Unexplained:
			v.Elsewhere = append(v.Elsewhere, words.F("%s unexplained", some(it, r.Quantity)))
		default:
			v.Elsewhere = append(v.Elsewhere, some(it, r.Quantity)+" "+low(n.placeName(r.Place)))
		}
	}
	for _, r := range v.Rows {
		v.LinesOut++
		v.PiecesOut += r.N
		if r.Grab > 0 {
			v.GrabLines++
		}
		if r.N > r.Grab {
			v.LeaveLines++
			v.LeavePieces += r.N - r.Grab
		}
	}
	v.Chocks = n.chocks(rig, c.chocks)
	v.Without = n.without(rig, v.Rows)
	v.Radio = n.radio(&v)
	return v
}

// releaseRow proposes a side: what lies on the tarp, or is critical at a
// place, goes along; the rest stays. What a person chose stands before that.
func (n *now) releaseRow(r model.PlaceRow, c *split, left bool) releaseRow {
	it := &n.d.Items[r.Line]
	row := releaseRow{Item: it.ID, Key: it.ID + "@" + r.Place.String(), Name: it.Short(), Where: n.placeName(r.Place), N: r.Quantity, Counts: r.Quantity > 1}
	if r.Place.Kind == model.Tarp {
		row.Where = words.L("on the tarp")
	}
	if r.Holder != "" && r.Place.Kind == model.At {
		row.Where += words.F(" with %s", n.memberShort(r.Holder))
	}
	if it.Quantity > 1 {
		row.Name = many(it.Short())
	}
	if n.s.TwoPerson(r.Line) {
		row.Where += words.L(", two people")
	}
	if r.Place.Kind == model.Tarp || it.Critical {
		row.Grab = r.Quantity
	}
	if g, ok := c.grab[row.Key]; ok {
		row.Grab = max(0, min(g, r.Quantity))
	}
	if left && !c.signed {
		row.Grab = 0
	}
	return row
}

// staysWith is the rig that takes care of the rest: the one that was chosen,
// else the one of the same agency with the most pieces off.
func (n *now) staysWith(rig, chosen string) string {
	best, most := "", -1
	for _, r := range n.present() {
		if r == rig || !n.atScene(r) {
			continue
		}
		if r == chosen {
			return r
		}
		off := n.account(r).CameOff
		if n.d.RigAgency(r) == n.d.RigAgency(rig) {
			off += 1 << 20
		}
		if off > most {
			best, most = r, off
		}
	}
	return best
}

// signed reads from the entries how far the release has come.
func (n *now) signed(v *releaseView) {
	v.Left = slices.Contains(n.scene.Left, v.Rig)
	for i := range n.pic.Entries {
		e := &n.pic.Entries[i]
		if e.Scene != n.scene.ID || e.Rig != v.Rig || !e.Taken() {
			continue
		}
		switch e.Verb {
		case model.Arrive:
			v.Released, v.Accepted = 0, false
		case model.Release:
			v.Released, v.ReleasedBy = e.At(), n.memberShort(e.By)
		case model.Accept:
			v.Accepted, v.AcceptedBy = true, n.memberShort(e.By)
			if e.Holder != "" {
				v.Stays, v.StaysName = e.Holder, n.rigName(e.Holder)
			}
		case model.Leave:
			v.LeftAt = e.At()
			if v.Released == 0 {
				v.Released, v.ReleasedBy = e.At(), n.memberShort(e.By)
			}
		}
	}
}

// chocks says what the log has of the wheel chocks of a rig.
func (n *now) chocks(rig, answer string) chocksView {
	v := chocksView{Answer: answer}
	total := 0
	for i := range n.d.Items {
		it := &n.d.Items[i]
		if it.Rig != rig || !wheelChock(it) {
			continue
		}
		total += it.Quantity
		if n.s.Aboard(i) {
			v.Home += n.s.Line(i).N(n.s.HomeOf(i))
		}
	}
	switch {
	case total == 0:
		v.Says = words.L("The stores list none for this rig. Look before rolling.")
	case v.Home == total:
		v.Says = parts.Or(words.F("The log has %d at home, on no list. Look before rolling.", total), words.F("%d at home, on no list.", total))
	default:
		v.Says = parts.Or(words.F("The log has %d of %d at home. Look before rolling.", v.Home, total), words.F("%d of %d at home.", v.Home, total))
	}
	switch answer {
	case "yes":
		v.Says = words.L("Aboard, somebody looked.")
	case "no":
		v.Says = words.L("Not aboard: fetch them. Signed like this, they are logged as missing and looked for.")
	}
	return v
}

func wheelChock(it *model.Item) bool {
	return strings.Contains(strings.ToLower(it.Name), "wheel chock")
}

// without says what the rig could not do once it has gone with what it grabs.
func (n *now) without(rig string, rows []releaseRow) []string {
	grab := map[int]int{}
	for _, r := range rows {
		grab[n.d.ItemIndex(r.Item)] += r.Grab
	}
	var out []string
	for _, r := range n.ready() {
		if r.Rig != rig {
			continue
		}
		now := r.Now
		var open []string
		for _, i := range r.Lines {
			if grab[i] == 0 {
				continue
			}
			if n.s.Line(i).TaggedOut > 0 {
				continue
			}
			now += grab[i]
			if ask, ok := rundown.Gauge(n.d, &n.d.Items[i]); ok {
				word := words.L("not read")
				if n.s.Line(i).IsOpen(ask.Check) {
					word = words.L("low")
				}
				open = append(open, n.d.Items[i].Short()+": "+parts.B(word))
			}
		}
		name := capital(n.familyName(r.Lines))
		switch {
		case now == 0:
			out = append(out, name+": "+parts.B(words.L("none")))
		case now < r.Full:
			out = append(out, fmt.Sprintf("%s: %s", name, parts.B(words.F("%d of %d", now, r.Full))))
		}
		out = append(out, open...)
	}
	return out
}

// radioNames is how many lines the sentence names one by one.
const radioNames = 7

// radio is the sentence for the radio. It rewrites itself with every touch.
func (n *now) radio(v *releaseView) string {
	say := func(take func(releaseRow) int) string {
		var names []string
		for _, r := range v.Rows {
			if k := take(r); k > 0 {
				it := n.d.Item(r.Item)
				name := some(it, k)
				if it.Quantity == 1 {
					name = words.F("the %s", name)
				}
				names = append(names, name)
			}
		}
		if over := len(names) - radioNames; over > 1 {
			names = append(names[:radioNames:radioNames], words.N("%d more line", "%d more lines", over))
		}
		return listed(names)
	}
	grab := say(func(r releaseRow) int { return r.Grab })
	stay := say(func(r releaseRow) int { return r.N - r.Grab })
	with := ""
	if v.Stays != "" {
		with = words.F(" with %s", v.StaysName)
	}
	switch {
	case len(v.Rows) == 0:
		return words.F("%s has nothing out here. It leaves nothing.", v.Name)
	case v.Left && grab != "":
		return words.F("%s left %s%s. Ask it by radio: is %s aboard?", v.Name, parts.B(orWord(stay, words.L("nothing"))), with, grab)
	case v.Left:
		return words.F("%s left %s%s.", v.Name, parts.B(stay), with)
	case stay == "":
		return words.F("%s, take %s. You leave nothing.", v.Name, grab)
	case grab == "":
		return words.F("%s leaves %s%s.", v.Name, parts.B(stay), with)
	}
	return words.F("%s, take %s. %s leaves %s%s.", v.Name, grab, v.Name, parts.B(stay), with)
}

// aloudRelease is the release to be read aloud.
func (v *releaseView) aloud() []aloudPage {
	var grab, leave []aloudLine
	for _, r := range v.Rows {
		if r.Grab > 0 {
			grab = append(grab, aloudLine{Text: r.say(r.Grab)})
		}
		if r.N > r.Grab {
			leave = append(leave, aloudLine{Text: r.say(r.N - r.Grab)})
		}
	}
	out := []aloudPage{{v.Name, "", []aloudLine{{Text: v.Radio}}}}
	if len(grab) > 0 {
		out = append(out, aloudPage{words.L("Grab now"), words.N("%d line", "%d lines", len(grab)), grab})
	}
	if len(leave) > 0 {
		out = append(out, aloudPage{words.L("Leave"), words.N("%d line", "%d lines", len(leave)), leave})
	}
	return out
}

func (r releaseRow) say(k int) string {
	if r.N == 1 {
		return r.Name + ", " + r.Where
	}
	return fmt.Sprintf("%d %s, %s", k, r.Name, r.Where)
}
