package ui

import (
	"fmt"
	"strings"
	"time"

	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// newSets lists kits as sets that can be used, the missing key by name, and
// what expires, the soonest first.
func newSets(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for _, k := range restock.Kits(n.s) {
			if k.Whole {
				continue
			}
			it := &n.d.Items[k.Line]
			v := parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: it.Short(), Tone: parts.Quiet, Go: "go",
				Second: words.F("short of %s", lackWords(k.Lacks)), Right: words.L("short, usable")}
			if !k.Usable {
				v.Tone, v.Right, v.Second = parts.Alarm, words.L("not usable"), words.F("needs %s", lackWords(k.Key))
			}
			out = append(out, rowDo{v, func() { sh.open(newLinePage(sh, it.ID)) }})
		}
		for _, l := range restock.Dates(n.s.Wanted()) {
			out = append(out, n.dateRow(l))
		}
		if len(out) == 0 {
			out = append(out, rowDo{view: parts.RowView{ID: "no-sets", Title: words.L("Every set is whole"), Second: words.L("and nothing has a date"), Off: true}})
		}
		return out
	}
	return newRowList(words.L("Sets and dates"), words.L("Sets that are not whole, then what expires, the soonest first"), rows, func(n *now) (string, string) {
		return words.L("As they are now"), n.setWords()
	})
}

// lackWords are what is wanting: "1 spring punch, 2 pins".
func lackWords(lacks []restock.Lack) string {
	var out []string
	for _, l := range lacks {
		name := low(l.Name)
		if l.N > 1 {
			name = many(name)
		}
		out = append(out, fmt.Sprintf("%d %s", l.N, name))
	}
	return few(out, 3)
}

// soonDays is when a date begins to be counted down.
const soonDays = 60

// dateRow is a lot with its date.
func (n *now) dateRow(l restock.Dated) rowDo {
	v := parts.RowView{ID: "date-" + l.Item + l.Stock + "-" + l.Text, Title: fmt.Sprintf("%d %s", l.N, low(many(l.Name))), Tone: parts.Quiet, Second: words.L("in the store"), Off: true}
	if it := n.s.Wanted().Item(l.Item); it != nil {
		v.Title = capital(some(it, l.N))
		v.Kind, v.Mark, v.Second, v.Off, v.Go = parts.KindPiece, n.mark(it.Rig), n.slotWords(it), false, "go"
	}
	switch days := l.DaysTo(n.at); {
	case !l.Known && l.Text == "":
		v.Right = words.L("no date: read it")
	case !l.Known:
		v.Right = words.F("date not read: %s", l.Text)
	case l.Expired(n.at):
		v.Tone, v.Right = parts.Alarm, words.F("expired %s", l.Last.Format(time.DateOnly))
	case days < soonDays:
		v.Right = words.F("%d days left", days)
	default:
		v.Right = l.Last.Format(time.DateOnly)
	}
	do := func() {}
	if l.Item != "" {
		do = func() { n.Shell.open(newLinePage(n.Shell, l.Item)) }
	}
	return rowDo{v, do}
}

// setWords count the sets by family.
func (n *now) setWords() string {
	usable, all := map[string]int{}, map[string]int{}
	lines := map[string][]int{}
	var order []string
	for i := range n.d.Items {
		if it := &n.d.Items[i]; it.Kind == model.Kit && it.Family != "" && len(n.d.Inside(i)) > 0 {
			if all[it.Family] == 0 {
				order = append(order, it.Family)
			}
			all[it.Family]++
			lines[it.Family] = append(lines[it.Family], i)
		}
	}
	for _, k := range restock.Kits(n.s) {
		if k.Usable {
			usable[n.d.Items[k.Line].Family]++
		}
	}
	var out []string
	for _, f := range order {
		name := n.familyName(lines[f])
		if name == "" {
			name = n.d.Items[lines[f][0]].Short()
		}
		out = append(out, words.F("%s %d of %d usable", parts.B(capital(name)+":"), usable[f], all[f]))
	}
	out = append(out, "", parts.B(words.L("Dates:"))+" "+words.L("the column expires of the inventory or of the store, as 2027-03, or 6 2027-03; 6 2028-01. A date that cannot be read is asked again."))
	return strings.Join(out, "\n")
}

// newOrders is what to order, by supplier and in the supplier's packs.
func newOrders(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for _, o := range restock.Orders(restock.ToOrder(n.s)) {
			who := o.Supplier
			if who == "" {
				who = words.L("Supplier not said")
			}
			for _, l := range o.Lines {
				packs := words.L("1 pack")
				if l.Packs != 1 {
					packs = words.F("%d packs", l.Packs)
				}
				out = append(out, rowDo{view: parts.RowView{ID: "order-" + l.Stock, Figure: fmt.Sprint(l.Packs), Title: l.Name, Second: words.F("%s of %d. %s", packs, l.Pack, who), Right: words.F("%s in all", parts.B(fmt.Sprint(l.Pieces()))), Go: "go", Tone: parts.Quiet, Off: n.pic.ReadOnly != ""},
					do: func() { sh.countShelf(l.Stock) }})
			}
		}
		if len(out) == 0 {
			out = append(out, rowDo{view: parts.RowView{ID: "no-order", Title: words.L("Nothing to order"), Second: words.L("the store stays above its points"), Off: true}})
		}
		return out
	}
	return newRowList(words.L("Order list"), words.L("By supplier, in whole packs. Touch a line when it has come"), rows, func(*now) (string, string) {
		return words.L("How it was got"), howWords(restock.Formula, restock.Source, restock.Limits) + "\n" +
			parts.B(words.L("Supplier:")) + " " + words.L("the column supplier of the stock table, if the department keeps it")
	})
}
