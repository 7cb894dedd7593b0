package ui

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

const settingPulls = "pulls:" // and the scene: the list that was chosen

// pullChoice is the list that somebody chose for a scene, and what holds of
// the conditions that its lines name: winter, a slope, a long way.
type pullChoice struct {
	List  string   `json:"list"`
	Holds []string `json:"holds,omitempty"`
}

// chosenPulls is what was chosen for the scene; nothing if nobody did.
func (n *now) chosenPulls() (c pullChoice) {
	text, err := n.opts.Board.Setting(settingPulls + n.scene.ID)
	if err != nil || json.Unmarshal([]byte(text), &c) != nil || !slices.Contains(n.pullLists(), c.List) {
		return pullChoice{}
	}
	return c
}

func (n *now) keepPulls(c pullChoice) error {
	text, err := json.Marshal(c)
	if err != nil {
		return err
	}
	return n.opts.Board.SetSetting(settingPulls+n.scene.ID, string(text))
}

// pullLists are the lists in the order of the table.
func (n *now) pullLists() []string {
	var out []string
	for _, p := range n.d.Pulls {
		if !slices.Contains(out, p.List) {
			out = append(out, p.List)
		}
	}
	return out
}

// pullList is the list that was chosen for the scene, or else the one that the
// scene was opened as. Without either it is that of which the most lines are
// off already, the first one while nothing is.
func (n *now) pullList() string {
	if c := n.chosenPulls(); c.List != "" {
		return c.List
	}
	if slices.Contains(n.pullLists(), n.scene.Name) {
		return n.scene.Name
	}
	off, best := map[string]int{}, ""
	for _, p := range n.d.Pulls {
		if best == "" {
			best = p.List
		}
		if i := n.d.ItemIndex(p.Item); i >= 0 && !n.s.Aboard(i) {
			off[p.List]++
		}
	}
	for _, p := range n.d.Pulls {
		if off[p.List] > off[best] {
			best = p.List
		}
	}
	return best
}

// wanted is a line of a pull list of which pieces are still on a rig here.
type wanted struct {
	line, n int
	need    string // must, should, if
	when    string // the condition, nothing if it is always wanted
}

// needs is the order in which lines are asked for. "must if EMS stays at the road" is a
// must with a condition of its own.
var needs = []string{words.K("must"), words.K("should"), "if"}

func needOf(text string) (need, when string) {
	need, when, _ = strings.Cut(strings.TrimSpace(text), " ")
	return need, when
}

// condition is what must hold for a line to be wanted: its season, or what
// stands with its need.
func condition(p *model.Pull) string {
	if _, when := needOf(p.Need); when != "" {
		return when
	}
	if p.Season == "any" {
		return ""
	}
	return p.Season
}

// wantedFrom are the lines of a list that are still to come off, as far as
// their rig is here. The list shrinks as pieces go, wherever they went.
func (n *now) wantedFrom(list string) []wanted {
	here := n.present()
	seen := map[string]bool{}
	var out []wanted
	for _, want := range needs {
		for k := range n.d.Pulls {
			p := &n.d.Pulls[k]
			need, _ := needOf(p.Need)
			i := n.d.ItemIndex(p.Item)
			if p.List != list || need != want || i < 0 || seen[p.Item] || !slices.Contains(here, n.d.Items[i].Rig) {
				continue
			}
			aboard := n.s.Line(i).N(n.s.HomeOf(i))
			asked, err := strconv.Atoi(p.Quantity)
			if err != nil {
				asked = 1
			}
			left := min(aboard, asked-(n.d.Items[i].Quantity-aboard))
			if left <= 0 || !n.s.Aboard(i) {
				continue
			}
			seen[p.Item] = true
			out = append(out, wanted{i, left, need, condition(p)})
		}
	}
	return out
}

// conditions are what lines that are still to come off depend on.
func conditions(lines []wanted) []string {
	var out []string
	for _, w := range lines {
		if w.when != "" && !slices.Contains(out, w.when) {
			out = append(out, w.when)
		}
	}
	return out
}

// askedNext are the lines of the pull list that are still on a rig: those
// whose condition holds, or all while nothing was said of it. The list only
// suggests.
func (n *now) askedNext(hidden map[string]bool, picks []pick) (list string, out []parts.TileView) {
	list = n.pullList()
	holds := n.chosenPulls().Holds
	readings := n.readings()
	for _, w := range n.wantedFrom(list) {
		if hidden[n.d.Items[w.line].Rig] || w.when != "" && len(holds) > 0 && !slices.Contains(holds, w.when) {
			continue
		}
		out = append(out, n.tile(w.line, n.s.HomeOf(w.line), model.Place{Kind: model.Home}, picks, readings))
	}
	return list, out
}

const listTileID = "pull-list"

// listTile opens the lists, at the end of what is asked next.
func listTile(n *now) *parts.TileView {
	if len(n.d.Pulls) == 0 {
		return nil
	}
	return &parts.TileView{State: parts.TileAct, ID: listTileID, Name: words.L("Pull list"), Icon: "paper"}
}

// pullRow is a line of the list with its tick.
func (n *now) pullRow(w wanted, ticked bool) parts.RowView {
	it := &n.d.Items[w.line]
	v := parts.RowView{ID: "line-" + it.ID, Mark: n.mark(it.Rig), Title: it.Short(), Second: words.L(w.need), Tone: parts.Hole, State: "not ticked", Right: words.L("stays")}
	if w.need == "if" {
		v.Second = words.L("if needed")
	}
	if w.when != "" {
		v.Second += " (" + w.when + ")"
	}
	if slot := n.d.Slot(it.Slot); slot != nil {
		v.Second += ", " + slot.Compartment
	}
	if ticked {
		v.Tone, v.State, v.Right, v.Go = parts.Live, "ticked", "", "tick"
	}
	if it.Quantity > 1 {
		v.Title = pieces(it, w.n)
	}
	return v
}
