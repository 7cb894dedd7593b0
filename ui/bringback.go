package ui

import (
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// bringbackScreen closes at the station what a scene left open: what others
// have, what is out of service or to be charged, washed, dried, and the
// restock.
type bringbackScreen struct {
	paper *parts.Key // the close-out on paper
	sh    *Shell
	tree  *tree
	root  *fyne.Container
	n     *now

	tab    string
	chosen string            // chore.id, or the name of a restock row
	line   string            // restock: the item that is refilled
	given  map[string]string // answers, by check
	k      int               // how many; nought for all
	pad    string            // what is being typed: a check, or how many
	typed  string
	member string // who repaired it
}

// padMany is the number that says how many, in place of a check.
const padMany = "how-many"

func newBringBack(sh *Shell) screen {
	b := &bringbackScreen{sh: sh, tab: tabOthers, given: map[string]string{}}
	b.tree = newTree(b.act)
	b.root = b.tree.box
	b.paper = parts.NewKey(parts.KeyView{ID: "paper", Title: words.L("Paper"), Icon: "paper", Tone: parts.Header}, func() { sh.onPaper("closeout") })
	return b
}

func (b *bringbackScreen) body() fyne.CanvasObject { return b.root }

// show brings the screen up to date.
func (b *bringbackScreen) show(n *now) head {
	b.n = n
	b.draw()
	return head{title: words.L("Bring back"), sentence: b.sentence(), middle: []fyne.CanvasObject{b.paper}, widths: []float32{152}}
}

func (b *bringbackScreen) choose(id string) {
	b.chosen = id
	b.clear()
	b.sh.refresh()
}

// clear forgets what was answered for the piece before.
func (b *bringbackScreen) clear() {
	b.given, b.k, b.pad, b.typed, b.member, b.line = map[string]string{}, 0, "", "", "", ""
	b.sh.said = nil
}

// current is the chore that was chosen.
func (b *bringbackScreen) current() (chore, bool) {
	for _, c := range b.n.chores() {
		if c.tab == b.tab && c.id(b.n.d) == b.chosen {
			return c, true
		}
	}
	return chore{}, false
}

// act does what was touched.
func (b *bringbackScreen) act(id string) {
	kind, rest, _ := strings.Cut(id, ":")
	switch {
	case id == "seen":
		b.sh.said = nil
	case id == "undo":
		if tap, left := b.n.undoFor(); left > 0 {
			b.clear()
			b.sh.log(tap)
		}
		return
	case id == tabOthers || id == tabOut || id == tabToDo || id == tabRestock:
		b.tab, b.chosen = id, ""
		b.clear()
	case strings.HasPrefix(id, "stock-"):
		b.choose(id)
		return
	case kind == parts.KindPiece && b.tab == tabRestock:
		b.line, b.k = rest, 0
	case kind == parts.KindPiece:
		b.choose(rest)
		return
	case kind == parts.KindMember:
		b.member = rest
	case kind == "answer":
		check, word, _ := strings.Cut(rest, "=")
		b.answer(check, word)
	case kind == parts.KindDigit:
		b.digit(rest)
	case strings.HasPrefix(id, "read-"):
		b.pad, b.typed = strings.TrimPrefix(id, "read-"), ""
	case id == "how-many":
		b.pad, b.typed = padMany, ""
	case id == "later" || id == "back":
		b.pad, b.typed = "", ""
	case id == "restock":
		b.restock()
		return
	case id == "shelf":
		if r, _, ok := b.refill(); ok && r.Stock != nil {
			b.sh.countShelf(r.Stock.ID)
		}
		return
	case id == "order-list":
		b.sh.open(newOrders(b.sh))
		return
	default:
		b.finish(id)
		return
	}
	b.sh.refresh()
}

// answer keeps an answer. A kit of which the log knows that it is short, but
// usable, is answered for the rest of it.
func (b *bringbackScreen) answer(check, word string) {
	if c, ok := b.current(); ok && check == model.CountCheck && word == "yes" && b.n.s.KitState(c.line) == model.ShortUsable {
		word = "short"
	}
	b.given[check] = word
}

// digit takes one key of the pad.
func (b *bringbackScreen) digit(key string) {
	switch key {
	case "delete":
		if k := len(b.typed); k > 0 {
			b.typed = b.typed[:k-1]
		}
	case "done":
		if b.padOK() {
			if b.pad == padMany {
				b.k, _ = strconv.Atoi(b.typed)
			} else {
				b.given[b.pad] = b.typed
			}
			b.pad, b.typed = "", ""
		}
	default:
		if len(b.typed) < mostDigits {
			b.typed += key
		}
	}
}

// padOK tells whether what is typed can be an answer. Blank never is one.
func (b *bringbackScreen) padOK() bool {
	if b.pad == padMany {
		k, err := strconv.Atoi(b.typed)
		return err == nil && k >= 1 && k <= b.most()
	}
	c := b.n.d.Check(b.pad)
	f, err := strconv.ParseFloat(b.typed, 64)
	return c != nil && err == nil && f >= c.Min && f <= c.Max
}

// most is the largest number of pieces that the act can be about.
func (b *bringbackScreen) most() int {
	if b.tab == tabRestock {
		if r, line, ok := b.refill(); ok {
			return b.n.canTake(r, line)
		}
		return 0
	}
	c, _ := b.current()
	return c.n
}

// many is how many pieces the act is about.
func (b *bringbackScreen) many() int {
	if most := b.most(); b.k == 0 || b.k > most {
		return most
	}
	return b.k
}

// reading is what was answered, as it is logged, and how many questions are
// open or do not pass.
func (b *bringbackScreen) reading(c chore) (reading string, open, failing int) {
	var words []string
	p := piece{line: c.line, item: &b.n.d.Items[c.line]}
	for _, a := range c.asks {
		word := b.given[a.Check]
		switch {
		case word == "":
			open++
			continue
		case !b.n.passes(p, a.Check, word):
			failing++
		}
		words = append(words, a.Check+"="+word)
	}
	return strings.Join(words, ";"), open, failing
}

// finish ends a chore, or brings the piece home without having looked at it.
func (b *bringbackScreen) finish(id string) {
	c, ok := b.current()
	if !ok {
		return
	}
	own, _ := choreDone(c, 0)
	reading, open, failing := b.reading(c)
	unseen := id == "not-looked-at"
	a := model.Act{Verb: c.verb, Item: b.n.d.Items[c.line].ID, Quantity: b.many(), Reading: reading}
	switch {
	case !unseen && (id != own || open > 0):
		return
	case unseen && (c.verb == model.Repair || c.verb == model.CheckIt):
		return
	case unseen:
		a.Reading = ""
	}
	if c.verb == model.Repair {
		if b.member == "" || failing > 0 {
			return
		}
		b.repair(a)
		return
	}
	if c.verb != model.CheckIt {
		a.From, a.To = c.from.String(), "home"
	}
	b.log(a)
}

// repair logs who put pieces back in service, after what was read of them. It
// takes a tag off, so an officer says so.
func (b *bringbackScreen) repair(a model.Act) {
	acts := []model.Act{{Verb: model.Repair, By: b.member, Item: a.Item, Quantity: a.Quantity}}
	if a.Reading != "" {
		acts = slices.Insert(acts, 0, model.Act{Verb: model.CheckIt, By: b.member, Item: a.Item, Quantity: a.Quantity, Reading: a.Reading})
	}
	b.sh.asOfficer(words.L("Back in service"), func() { b.log(acts...) })
}

func (b *bringbackScreen) log(acts ...model.Act) {
	b.sh.unlessHeld(acts, func(acts []model.Act) {
		b.clear()
		b.sh.log(board.Tap{Acts: acts})
	})
}

// refill is the row of the restock that was chosen, and the line of it.
func (b *bringbackScreen) refill() (row restock.Row, line int, ok bool) {
	for _, r := range restock.List(b.n.s) {
		if stockID(r) != b.chosen {
			continue
		}
		lines := b.n.refills(r)
		for _, i := range lines {
			if b.n.d.Items[i].ID == b.line {
				return r, i, true
			}
		}
		if len(lines) == 0 {
			return r, -1, true
		}
		return r, lines[0], true
	}
	return restock.Row{}, -1, false
}

func stockID(r restock.Row) string {
	if r.Stock != nil {
		return "stock-" + r.Stock.ID
	}
	return "stock-" + r.Name
}

// refills lists the lines of a restock row that have pieces used up or lost.
func (n *now) refills(r restock.Row) []int {
	var out []int
	for i := range n.d.Items {
		it := &n.d.Items[i]
		same := it.Name == r.Name && n.d.StockLine(it.Stock) == nil
		if r.Stock != nil {
			same = it.Stock == r.Stock.ID
		}
		if same && n.gone(i) > 0 {
			out = append(out, i)
		}
	}
	return out
}

// gone is how many pieces of a line were used up or lost.
func (n *now) gone(line int) int {
	l := n.s.Line(line)
	return l.N(model.Place{Kind: model.Used}) + l.N(model.Place{Kind: model.Lost})
}

// canTake is how many can be replaced of a line: no more than the store has.
func (n *now) canTake(r restock.Row, line int) int {
	if line < 0 {
		return 0
	}
	k := n.gone(line)
	if r.Stock != nil {
		k = min(k, r.Before)
	}
	return k
}

// restock takes pieces from the store: first for what was used, then for what
// was lost.
func (b *bringbackScreen) restock() {
	_, line, ok := b.refill()
	if !ok || line < 0 {
		return
	}
	left, item := b.many(), b.n.d.Items[line].ID
	var acts []model.Act
	for _, from := range []model.PlaceKind{model.Used, model.Lost} {
		if k := min(left, b.n.s.Line(line).N(model.Place{Kind: from})); k > 0 {
			acts = append(acts, model.Act{Verb: model.Restock, Item: item, Quantity: k, From: string(from), To: "home"})
			left -= k
		}
	}
	if len(acts) > 0 {
		b.log(acts...)
	}
}
