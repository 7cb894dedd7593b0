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

// termID is a term of the balance as the id of its row.
func termID(k int) string { return "term-" + strings.ReplaceAll(parts.FootWords[k], " ", "-") }

// newAccount is the balance of one rig, term by term.
func newAccount(sh *Shell, rig string) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for k, count := range footCounts(n.account(rig)) {
			if lines := n.termLines(rig, k); len(lines) > 0 {
				out = append(out, rowDo{parts.RowView{ID: termID(k), Figure: fmt.Sprint(count), Title: words.L(parts.FootWords[k]), Right: words.N("%d line", "%d lines", len(lines)), Tone: parts.Quiet, Go: "go"},
					func() { sh.open(newTermLines(sh, rig, k)) }})
			}
		}
		return out
	}
	return newRowList(sh.now().rigName(rig), words.L("Touch a figure: it shows the lines that make it up"), rows, func(n *now) (string, string) {
		a := n.account(rig)
		says := words.L("It adds up.")
		if !a.Adds() {
			says = words.L("It does not add up. No entry is lost.")
		}
		var terms []string
		for _, k := range footCounts(a) {
			if k > 0 {
				terms = append(terms, fmt.Sprint(k))
			}
		}
		return words.L("How it is counted"), parts.B(fmt.Sprintf("%s = %d", strings.Join(terms, " + "), a.CameOff)) + "  " + says + "\n" +
			words.F("%s came off: the most of each line that was away at once. The figures beside say where they are now. "+
				"What kits hold is counted too, so there are more lines here than on Glance.", words.N("%d piece", "%d pieces", a.CameOff))
	})
}

// termLines are the lines of a rig that have pieces in a term of the balance.
func (n *now) termLines(rig string, term int) (out []int) {
	for i := range n.d.Items {
		if n.d.Items[i].Rig == rig && footCounts(n.s.AccountOf(n.scene.ID, i))[term] > 0 {
			out = append(out, i)
		}
	}
	return out
}

// newTermLines are the lines behind one figure.
func newTermLines(sh *Shell, rig string, term int) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for _, i := range n.termLines(rig, term) {
			it := &n.d.Items[i]
			where, _ := n.realWords(i)
			if k := fmt.Sprintf("%d ", footCounts(n.s.AccountOf(n.scene.ID, i))[term]); !strings.Contains(where, "; ") {
				where = strings.TrimPrefix(where, k) // all are there: the figure says how many
			}
			k := footCounts(n.s.AccountOf(n.scene.ID, i))[term]
			out = append(out, rowDo{parts.RowView{Kind: parts.KindPiece, ID: it.ID, Figure: fmt.Sprint(k), Title: it.Short(), Second: where, Tone: parts.Quiet, Go: "go"},
				func() { sh.open(newEntries(sh, it.ID)) }})
		}
		return out
	}
	total := footCounts(sh.now().s.Account(sh.now().scene.ID, rig))[term]
	return newRowList(fmt.Sprintf("%d %s", total, words.L(parts.FootWords[term])), words.F("%s. Touch a line for its entries", sh.now().rigName(rig)), rows, nil).folded(340)
}

// entryView is one entry as a row to read.
type entryView struct {
	id, when, what, who string
	refused             bool
}

// entriesOf are the entries of the scene about a line, the newest first:
// those that name it and those that moved it along.
func (n *now) entriesOf(item string) (out []entryView) {
	for i := len(n.pic.Entries) - 1; i >= 0; i-- {
		e := &n.pic.Entries[i]
		moved := e.Item == item
		for _, m := range e.Moves {
			moved = moved || m.Item == item
		}
		if e.Scene != n.scene.ID || !moved {
			continue
		}
		v := entryView{id: fmt.Sprintf("%s %d", e.Device, e.N()), when: n.clock(e.At()), what: parts.Plain(n.actLine(e)), who: n.memberName(e.By)}
		if e.Holder != "" && e.Holder != e.By {
			v.who = toWords(v.who, n.memberName(e.Holder))
		}
		switch e.Reply.Word {
		case model.Refused:
			v.what, v.refused = words.F("Refused: %s", n.refusalWords(e)), true
		case model.Contested:
			v.what += words.L(", contested")
		}
		from := words.F("tablet %s", e.Device)
		if e.Entered != 0 {
			from = words.L("from paper")
		}
		v.who = join(v.who, from)
		out = append(out, v)
	}
	return out
}

// refusalWords is why an entry was refused; readings in it stand in words.
func (n *now) refusalWords(e *model.Entry) string {
	text := words.Said(e.Reply.Text)
	if why, reading, ok := strings.Cut(text, ": "); ok && strings.Contains(reading, "=") {
		return why + ": " + low(n.faultWords(reading))
	}
	return text
}

// toWords is who gave a piece, and to whom.
func toWords(by, to string) string {
	if by == "" {
		return words.F("to %s", to)
	}
	return words.F("%s, to %s", by, to)
}

// entryList is the entries of one line, to read.
type entryList struct {
	item string
	list *parts.Column
	rows *parts.Scroller
	none *parts.Label
	keep map[string]*parts.Row
	root *fyne.Container
}

func newEntries(_ *Shell, item string) *entryList {
	l := &entryList{item: item, keep: map[string]*parts.Row{}}
	l.list = parts.NewColumn(look.Gap)
	l.rows = parts.NewScroller(l.list)
	l.none = parts.NewLines(parts.LabelView{ID: "none", Role: look.Lead, Text: words.L("No entry of this scene is about it.")})
	l.root = box(func(size fyne.Size) { flush(l.rows, 0, 0, size.Width, size.Height) }, l.rows)
	return l
}

func (l *entryList) body() fyne.CanvasObject { return l.root }

func (l *entryList) show(n *now) head {
	var objs []fyne.CanvasObject
	for _, e := range n.entriesOf(l.item) {
		v := parts.RowView{ID: "entry", When: e.when, Title: e.what, Second: e.who, Off: true, Dim: true}
		if e.refused {
			v.Tone = parts.Alarm
		}
		if l.keep[e.id] == nil {
			l.keep[e.id] = parts.NewRow(v, nil)
		}
		l.keep[e.id].Set(v)
		objs = append(objs, l.keep[e.id])
	}
	if len(objs) == 0 {
		objs = append(objs, l.none)
	}
	l.list.SetInside(objs...)
	l.rows.Settle()
	h := head{title: n.itemName(l.item), sentence: words.N("%d entry of this scene, the newest first", "%d entries of this scene, the newest first", len(l.keep)), back: true}
	if it := n.d.Item(l.item); it != nil {
		h.mark = n.mark(it.Rig)
	}
	return h
}
