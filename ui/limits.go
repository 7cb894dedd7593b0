package ui

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// newLimits lists the checks that have a limit in the inventory.
func newLimits(sh *Shell) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for i := range n.s.Wanted().Checks {
			c := &n.s.Wanted().Checks[i]
			if lines := withLimit(n.s.Wanted(), c.ID); len(lines) > 0 {
				out = append(out, rowDo{parts.RowView{ID: "limit-" + c.ID, Title: c.Question, Second: n.limitNames(lines), Right: limitSpan(lines, c.ID), Tone: parts.Quiet, Go: "go"},
					func() { sh.open(newLimitLines(sh, c.ID)) }})
			}
		}
		return append(out, sh.sumRow())
	}
	return newRowList(words.L("Limits"), words.L("Each piece has its own limit. Touch a check"), rows, func(*now) (string, string) {
		return words.L("Where they come from"), words.L("The limits are this department's own and stand in its inventory; what stands beside each is from its table of checks. " +
			"Makers' instructions and local procedures come first. A change is an entry of the log and counts on all tablets.")
	})
}

// limitNames names what some lines are: a check of the same question may be
// asked of oxygen and of breathing air.
func (n *now) limitNames(lines []*model.Item) string {
	var names []string
	for _, it := range lines {
		name, _, _ := strings.Cut(it.Short(), ",")
		if name = strings.TrimRight(name, " 0123456789"); len(names) > 0 {
			name = low(name)
		}
		if !slices.ContainsFunc(names, func(s string) bool { return strings.EqualFold(s, name) }) {
			names = append(names, name)
		}
	}
	return fewOf(names, 2)
}

// withLimit are the lines that have a limit of their own for a check.
func withLimit(d *model.Department, check string) []*model.Item {
	var out []*model.Item
	for i := range d.Items {
		if a, ok := d.Items[i].Ask(check); ok && a.HasLimit {
			out = append(out, &d.Items[i])
		}
	}
	return out
}

// limitRange is the lowest and the highest limit of some lines.
func limitRange(lines []*model.Item, check string) (low, high float64) {
	for i, it := range lines {
		a, _ := it.Ask(check)
		if i == 0 || a.Limit < low {
			low = a.Limit
		}
		high = max(high, a.Limit)
	}
	return low, high
}

func limitSpan(lines []*model.Item, check string) string {
	low, high := limitRange(lines, check)
	if low == high {
		return words.F("at least %g", low)
	}
	return words.F("at least %g to %g", low, high)
}

// newLimitLines lists the lines of one check with their limits, and beside
// them the words of the table.
func newLimitLines(sh *Shell, check string) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for _, it := range withLimit(n.s.Wanted(), check) {
			a, _ := it.Ask(check)
			out = append(out, rowDo{n.shutRow(parts.RowView{Kind: parts.KindPiece, ID: it.ID, Mark: n.mark(it.Rig), Title: it.Short(), Second: n.slotWords(it), Right: words.F("at least %g", a.Limit), Strong: true, Tone: parts.Quiet}),
				func() { sh.asOfficer(words.L("Limits"), func() { sh.open(newLimitPad(sh, it.ID, check)) }) }})
		}
		return out
	}
	c := sh.now().s.Wanted().Check(check)
	if c == nil {
		c = &model.Check{ID: check, Question: check}
	}
	return newRowList(c.Question, words.L("Touch a piece to change its limit"), rows, func(*now) (string, string) { return words.L("In the table of checks"), sourceWords(c) })
}

// sourceWords are the words of the table of checks about one check.
func sourceWords(c *model.Check) string {
	return fmt.Sprintf("%s %s\n%s %s\n%s %s\n%s %s", parts.B(words.L("Answer:")), c.Answer, parts.B(words.L("Passes:")), c.Passes,
		parts.B(words.L("If it fails:")), c.IfItFails, parts.B(words.L("May be waved past by:")), c.Override)
}

// limitPad types a limit. One outside what is usual is asked twice.
type limitPad struct {
	sh          *Shell
	item, check string
	typed, says string
	asks        bool // outside what is usual: the second question is up
	out         *parts.Readout
	words       *parts.Label
	pad         *parts.DigitPad
	sure        *parts.Key
	root        *fyne.Container
}

func newLimitPad(sh *Shell, item, check string) *limitPad {
	p := &limitPad{sh: sh, item: item, check: check}
	p.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	p.words = parts.NewLines(parts.LabelView{ID: "limit-words", Role: look.Lead})
	p.pad = parts.NewDigitPad(p.key)
	p.sure = parts.NewKey(parts.KeyView{}, func() {
		if p.asks {
			p.keep()
		}
	})
	says := padWords(p.words)
	p.root = box(func(size fyne.Size) { layPad(size, p.pad, p.out, says, p.sure) }, p.pad, p.out, says, p.sure)
	return p
}

func (p *limitPad) body() fyne.CanvasObject { return p.root }

// limit is the item's own as it is, and what is typed; ok where that can be
// a limit at all.
func (p *limitPad) limit(d *model.Department) (is, typed float64, ok bool) {
	it, c := d.Item(p.item), d.Check(p.check)
	if it == nil || c == nil {
		return 0, 0, false
	}
	a, _ := it.Ask(p.check)
	f, err := strconv.ParseFloat(p.typed, 64)
	return a.Limit, f, err == nil && f >= c.Min && f <= c.Max
}

// unusual says in words why a limit is to be asked twice, "" if it is not:
// it lets more pass than any line of the check does today by a quarter, or
// asks for more than any piece may ever give.
func unusual(d *model.Department, item, check string, limit float64) string {
	c := d.Check(check)
	lines := slices.DeleteFunc(withLimit(d, check), func(it *model.Item) bool { return it.ID == item })
	if len(lines) == 0 {
		lines = withLimit(d, check)
	}
	low, high := limitRange(lines, check)
	switch {
	case limit < low*0.75:
		return words.F("The lowest limit of the others is %g. With %g, a piece that is nearly empty goes in as ready.", low, limit)
	case limit > max(high, c.Min+0.9*(c.Max-c.Min)):
		return words.F("The highest limit of the others is %g. With %g, a piece that is good may never pass.", high, limit)
	}
	return ""
}

// show brings the pad up to date.
func (p *limitPad) show(n *now) head {
	d := n.s.Wanted()
	it, c := d.Item(p.item), d.Check(p.check)
	is, typed, ok := p.limit(d)
	tone, text := parts.Live, ""
	switch {
	case p.typed == "":
		text = words.F("Now at least %g. Type the new limit.", is)
	case !ok:
		tone, text = parts.Alarm, words.F("It is from %g to %g.", c.Min, c.Max)
	case p.asks:
		tone, text = parts.Alarm, words.F("%s Is it meant?", unusual(d, p.item, p.check, typed))
	default:
		text = words.F("At least %g, instead of %g.", typed, is)
	}
	if p.says != "" {
		tone, text = parts.Alarm, p.says
	}
	p.out.Set(parts.ReadoutView{ID: "typed", Text: p.typed, Tone: tone})
	p.words.SetText(parts.B(text) + "\n" + sourceWords(c))
	p.pad.SetDone(map[bool]parts.Tone{true: parts.Filled, false: parts.Usual}[ok && !p.asks], !ok || p.asks)
	v := parts.KeyView{ID: "sure", Title: words.F("Yes, %g is meant", typed), Icon: "warn", Tone: parts.Alarm, Lay: parts.LayCentre}
	if !p.asks {
		v = parts.KeyView{ID: "sure", Title: words.L("Done is on the pad"), Off: true, Lay: parts.LayCentre, Role: look.BodyBold}
	}
	p.sure.Set(v)
	return head{title: it.Short(), sentence: c.Question, mark: n.mark(it.Rig), back: true}
}

func (p *limitPad) key(id string) {
	p.says = ""
	switch {
	case id == "done":
		d := p.sh.now().s.Wanted()
		if _, typed, ok := p.limit(d); !ok {
			break
		} else if unusual(d, p.item, p.check, typed) != "" {
			p.asks = true
			break
		}
		p.keep()
		return
	case id == "delete":
		p.typed, p.asks = p.typed[:max(len(p.typed)-1, 0)], false
	case len(p.typed) < 5:
		p.typed, p.asks = p.typed+id, false
	}
	p.sh.refresh()
}

// keep writes the limit into the inventory.
func (p *limitPad) keep() {
	it := *p.sh.now().s.Wanted().Item(p.item)
	_, typed, _ := p.limit(p.sh.now().s.Wanted())
	it.Checks = slices.Clone(it.Checks)
	for i := range it.Checks {
		if it.Checks[i].Check == p.check {
			it.Checks[i].Limit = typed
		}
	}
	if bad := p.sh.editItem(it); len(bad) > 0 {
		p.says = bad[0]
		p.sh.refresh()
		return
	}
	p.sh.back()
}

// editItem writes one line into the inventory, by one entry. It returns what
// keeps it from being taken, in words; then nothing was changed.
func (sh *Shell) editItem(it model.Item) []string {
	e, err := sh.opts.Board.EditStores(model.InventoryPatch{Put: &model.Department{Items: []model.Item{it}}}, sh.by)
	var problems stores.Problems
	switch {
	case errors.As(err, &problems):
		var out []string
		for _, p := range problems {
			out = append(out, words.F("%s: %s. Right would be: %s.", words.L(capital(strings.ReplaceAll(p.Column, "_", " "))), words.Said(p.Wrong), words.Said(p.Right)))
		}
		return out
	case err != nil:
		t := inWords(err)
		return []string{t.What + ". " + t.Safe + ". " + t.Do + "."}
	}
	sh.said = &said{entries: []model.Entry{e}}
	sh.catchUp()
	return nil
}
