package ui

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"
	"unicode"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// present lists the rigs that are here: those that arrived and have not left,
// and any with pieces off; in the order of the table, visitors last.
func (n *now) present() []string { return once(n, "present", n.whoIsHere) }

func (n *now) whoIsHere() []string {
	var out []string
	for _, r := range n.rigs() {
		off := n.account(r)
		here := slices.Contains(n.scene.Arrived, r) && !slices.Contains(n.scene.Left, r)
		if here || off.CameOff > off.Home {
			out = append(out, r)
		}
	}
	if len(out) == 0 {
		return n.rigs()
	}
	return out
}

// rigs lists every known rig.
func (n *now) rigs() []string {
	var out []string
	for _, r := range n.d.Rigs {
		out = append(out, r.ID)
	}
	return append(out, n.s.Visitors()...)
}

// agenciesHere lists the agencies that are here or have something of ours.
func (n *now) agenciesHere() []string {
	has := map[string]bool{}
	for _, r := range n.s.BringBack() {
		if r.Place.Kind == model.With {
			has[r.Place.Name] = true
		}
	}
	var out []string
	for _, a := range n.d.Agencies {
		here := slices.Contains(n.scene.Arrived, a.Code) && !slices.Contains(n.scene.Left, a.Code)
		if here || has[a.Code] {
			out = append(out, a.Code)
		}
		delete(has, a.Code)
	}
	for _, name := range n.addedTo(settingAgencies) {
		has[name] = true
	}
	return append(out, slices.Sorted(maps.Keys(has))...)
}

// mark is the owner mark of a rig.
func (n *now) mark(rig string) parts.MarkView {
	v := parts.MarkView{Letters: rig}
	if r := n.d.Rig(rig); r != nil {
		v.Shape, v.Colour = r.MarkShape, r.MarkColor
	}
	return v
}

// crewMark is the mark of a member's rig; none for who came with no listed rig,
// such as command: a word is no mark, and has no room in its place.
func (n *now) crewMark(m *model.Member) parts.MarkView {
	if n.d.Rig(m.Rig) == nil {
		return parts.MarkView{}
	}
	return n.mark(m.Rig)
}

// deviceWord is what wrote an entry: this tablet, another one, or a sheet of
// paper.
func (n *now) deviceWord(device string) string {
	switch {
	case board.FromPaper(device):
		return words.L("paper")
	case device == n.pic.Device:
		return words.L("this tablet")
	}
	return words.F("tablet %s", device)
}

// rigName is a rig in words.
func (n *now) rigName(rig string) string {
	if r := n.d.Rig(rig); r != nil && r.Name != "" {
		return r.Name
	}
	return rig
}

// partyName is an agency or rig in few words: "Medic 9", "Sheriff". What
// stands after a comma is the name people use; words that several agencies
// begin with are left out.
func (n *now) partyName(id string) string {
	if n.d.Rig(id) != nil {
		return n.rigName(id)
	}
	a := n.d.Agency(id)
	if a == nil {
		return id
	}
	if _, tail, ok := strings.Cut(a.Name, ", "); ok {
		return tail
	}
	said := strings.Fields(a.Name)
	keep := 0
	for _, other := range n.d.Agencies {
		if other.Code == id {
			continue
		}
		k := 0
		for w := strings.Fields(other.Name); k < len(w) && k < len(said)-1 && w[k] == said[k]; {
			k++
		}
		keep = max(keep, k)
	}
	said = said[keep:]
	for len(said) > 1 && slices.Contains([]string{"Department", "Office", "Service", "Company"}, said[len(said)-1]) {
		said = said[:len(said)-1]
	}
	return strings.Join(said, " ")
}

// memberName is a person by name; an id that nobody has stays as it is.
func (n *now) memberName(id string) string {
	if m := n.d.Member(id); m != nil {
		return m.Name
	}
	return id
}

// placeName is a place as its key and its heading say it.
func (n *now) placeName(p model.Place) string {
	switch p.Kind {
	case model.Tarp:
		return words.L("Tarp")
	case model.At:
		return placeWord(p.Name)
	case model.With, model.Riding:
		return n.partyName(p.Name)
	case model.InKit:
		if k := n.d.Item(p.Name); k != nil {
			return k.Short()
		}
	case model.Home:
		return words.L("home")
	}
	return words.L(kindNames[p.Kind])
}

// kindNames are the places that have no name of their own.
var kindNames = map[model.PlaceKind]string{
	model.Charging: words.K("Charging"), model.Bagged: words.K("Bagged"), model.Used: words.K("Used"), model.Lost: words.K("Lost"),
	model.Unexplained: words.K("Unexplained"), model.InKit: words.K("Kit"),
}

// placeWord reads BANK as Bank, and leaves V1 as it is.
func placeWord(name string) string {
	r := []rune(name)
	if len(r) < 3 || strings.ContainsFunc(name, unicode.IsLower) {
		return name
	}
	return string(r[:1]) + strings.ToLower(string(r[1:]))
}

// meaning is what a place is, if that is short enough for its key.
func (n *now) meaning(name string) string {
	for _, p := range n.d.Places {
		if p.Place == name {
			first, _, _ := strings.Cut(p.Meaning, ",")
			if len([]rune(first)) <= 14 {
				return first
			}
		}
	}
	return ""
}

// clock is the time of day of a moment in Unix milliseconds.
func (n *now) clock(ms int64) string { return time.UnixMilli(ms).In(n.at.Location()).Format("15:04") }

// minute is how long the scene has run.
func (n *now) minute() int {
	if n.scene.Opened == 0 {
		return 0
	}
	return int(n.at.Sub(time.UnixMilli(n.scene.Opened)).Minutes())
}

// sceneName is the scene in a few words.
func (n *now) sceneName() string {
	if n.scene.ID == "" || n.scene.Closed {
		return words.L("No scene is open")
	}
	return n.lastSceneName()
}

// lastSceneName is the scene in a few words, open or not.
func (n *now) lastSceneName() string {
	name, _, _ := strings.Cut(n.scene.Name, ". ")
	if _, where, ok := strings.Cut(name, ", "); ok && len(name) > 40 {
		name = where
	}
	if name == "" {
		name = words.L("Scene")
	}
	return name
}

// pieces is "4 Step chocks", or the name of a single piece.
func pieces(it *model.Item, n int) string {
	switch {
	case it.Quantity == 1:
		return it.Short()
	case n == 1:
		return "1 " + it.Short()
	}
	return fmt.Sprintf("%d %s", n, many(it.Short()))
}
