package ui

import (
	"slices"
	"strings"
	"time"

	"tarpside/model"
	"tarpside/model/loadup"
)

// luMode is what is done at the rig.
type luMode string

const (
	luLoad    luMode = ""        // the next piece goes in
	luSweep   luMode = "sweep"   // eyes on every slot of a door
	luCollect luMode = "collect" // from the places back to the tarp
	luCarry   luMode = "carry"   // pieces of other rigs
	luOther   luMode = "other"   // which of these, which rig, who loads
)

// luState is what the person at the rig has chosen and typed. All else comes
// from the picture of the board.
type luState struct {
	mode   luMode
	rig    string
	at     *loadup.Door      // where he stands, nil before the first door
	been   []loadup.Door     // doors he stood at before
	still  map[string]bool   // what was home when he came: it is drawn small
	item   string            // chosen by touch; "" is the next in
	asked  string            // the piece that the answers below are about
	given  map[string]string // check to answer
	pad    string            // the check being typed
	typed  string            // its figure so far
	anyway bool              // it is in although its slot is closed
	said   *model.Entry      // the refusal that is a question now
	judges bool              // which officer lets it pass?
	count  *blindCount       // pieces being counted
	bring  string            // a line at a place, while it is asked how many came back
	empty  string            // a slot that he says is empty
	seen   map[string]bool   // sweep: looked at and counted here
	loader map[string]string // who loads a rig, where it is not its driver
}

// blindCount is a count by eyes: every box starts empty, and after a pause
// all of them are empty again.
type blindCount struct {
	kit   string // "" where a slot is counted
	lines []int
	at    int
	typed string
	got   map[int]int
	last  time.Time // of the last touch
	again bool      // it was interrupted
}

// countPause is how long a count may rest before it starts from nothing.
const countPause = 60 * time.Second

// rest empties a count that was interrupted.
func (c *blindCount) rest(at time.Time) {
	if at.Sub(c.last) > countPause && (len(c.got) > 0 || c.typed != "") {
		c.got, c.typed, c.at, c.again = map[int]int{}, "", 0, true
	}
}

// stand walks to a door.
func (st *luState) stand(n *now, d loadup.Door) {
	if st.at != nil && *st.at != d && !slices.Contains(st.been, *st.at) {
		st.been = append(st.been, *st.at)
	}
	st.at, st.still = &d, map[string]bool{}
	for _, i := range n.linesAt(st.rig, d) {
		l := n.s.Line(i)
		if it := &n.d.Items[i]; l.N(n.s.HomeOf(i))+l.N(model.Place{Kind: model.Used}) == it.Quantity {
			st.still[it.ID] = true
		}
	}
	st.mode, st.empty, st.seen, st.count = luLoad, "", map[string]bool{}, nil
	st.choose("")
}

// choose takes another piece in hand: what was answered for the last one does
// not count for it.
func (st *luState) choose(item string) {
	st.item, st.asked, st.given, st.pad, st.typed = item, "", nil, "", ""
	st.anyway, st.said, st.judges = false, nil, false
}

// settle brings the choices up to date with the board: the rig, the door, and
// a piece that is in hand no more.
func (st *luState) settle(n *now) {
	if st.rig != n.rig {
		*st = luState{rig: n.rig, loader: st.loader}
	}
	if st.at == nil {
		d := loadup.Door{}
		if doors := n.doors(st.rig); len(doors) > 0 {
			d = doors[0]
		}
		if list := n.loads(st.rig, nil); len(list) > 0 {
			d = list[0].Door
		}
		mode := st.mode
		st.stand(n, d)
		st.mode = mode
	}
	p, ok := n.inHand(st)
	if st.item != "" && (!ok || p.item.ID != st.item) {
		st.choose("")
		p, ok = n.inHand(st)
	}
	if id := itemID(p, ok); st.asked != id {
		item := st.item
		st.choose(item)
		st.asked, st.given = id, map[string]string{}
		if ok {
			st.pad = n.firstNumber(p, st)
		}
	}
	if st.count != nil {
		st.count.rest(n.at)
	}
}

func itemID(p piece, ok bool) string {
	if !ok {
		return ""
	}
	return p.item.ID
}

// who is the member who loads the rig: its driver, if nobody else was chosen.
func (n *now) loader(st *luState) string {
	if m := st.loader[st.rig]; m != "" {
		return m
	}
	first := ""
	for _, m := range n.d.Members {
		if m.Rig != st.rig {
			continue
		}
		if strings.Contains(strings.ToLower(m.Role), "driver") {
			return m.ID
		}
		if first == "" {
			first = m.ID
		}
	}
	if first == "" {
		return n.by
	}
	return first
}

// A piece is what is in hand: so many of a line, lying at a place.
type piece struct {
	line   int
	item   *model.Item
	n      int
	from   model.Place
	tagged bool // out of service: it can only ride home tagged
}

// inHand is the piece that was touched, or else the next that goes in at this
// door; false where none does.
func (n *now) inHand(st *luState) (piece, bool) {
	if st.item != "" {
		if i := n.d.ItemIndex(st.item); i >= 0 {
			return n.pieceOf(i)
		}
	}
	for _, l := range n.atDoor(st) {
		return n.pieceOf(l.Line)
	}
	return piece{}, false
}

// atDoor are the pieces that still go in at the door where he stands.
func (n *now) atDoor(st *luState) []loadup.Load {
	var out []loadup.Load
	for _, l := range n.loads(st.rig, st.at) {
		if l.Door == *st.at {
			out = append(out, l)
		}
	}
	return out
}

// pieceOf is what can be put back of a line: from the tarp first, else from a
// place of the scene; those in service first.
func (n *now) pieceOf(line int) (piece, bool) {
	l := n.s.Line(line)
	var from model.Place
	k := 0
	for _, st := range l.Stacks {
		if st.Place.Ground != n.scene.Ground {
			continue
		}
		if st.Place.Kind == model.Tarp || st.Place.Kind == model.At && k == 0 {
			from, k = st.Place, st.N
			if from.Kind == model.Tarp {
				break
			}
		}
	}
	if k == 0 {
		return piece{}, false
	}
	p := piece{line: line, item: &n.d.Items[line], n: k, from: from}
	if sound := n.s.Out(line) - l.TaggedOut; sound > 0 {
		p.n = min(k, sound)
	} else {
		p.n, p.tagged = min(k, l.TaggedOut), true
	}
	return p, true
}
