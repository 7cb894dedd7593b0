package ui

import (
	"fmt"
	"strconv"
	"strings"

	"tarpside/model"
	"tarpside/model/look"
	"tarpside/model/rundown"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// sumSettings are the department's figures for the sums. All tablets of the
// file share them.
type sumSettings struct {
	run  rundown.Limits
	look look.Chances
	crew int // people who put back; 0 is the rig's own crew
}

// sumSettings are read once and kept until one is changed.
func (sh *Shell) sumSettings() *sumSettings {
	if sh.sums == nil {
		s := &sumSettings{run: rundown.Usual(), look: look.Usual()}
		for _, x := range s.figures(sh.now()) {
			text, err := sh.opts.Board.Setting(x.key)
			if err != nil || text == "" {
				continue
			}
			if f, err := strconv.Atoi(text); err == nil && f >= 0 && f <= x.most {
				x.set(f)
			}
		}
		sh.sums = s
	}
	return sh.sums
}

// sumFigure is one figure of the settings of the sums.
type sumFigure struct {
	key, group string
	title      string
	unit       string
	is         int
	most       int
	source     string
	set        func(k int)
}

// The groups of figures, as rows of Limits.
const (
	groupWarn   = "warn"
	groupLong   = "long"
	groupFull   = "full"
	groupChance = "chance"
)

// figures lists every figure that a department may set.
func (s *sumSettings) figures(n *now) []sumFigure {
	var out []sumFigure
	add := func(group, id, title, unit string, is float64, most int, source string, set func(f float64)) {
		out = append(out, sumFigure{group + "-" + id, group, title, unit, int(is + 0.5), most, source, func(k int) { set(float64(k)) }})
	}
	for _, c := range rundown.Checks() {
		add(groupWarn, c.ID, words.Said(c.Name), words.L("min left"), s.run.Warn[c.ID], 240, words.L("common practice, from memory"), func(f float64) { s.run.Warn[c.ID] = f })
	}
	add(groupWarn, "keep", words.L("Oxygen kept back"), words.L("psi"), s.run.Keep, 1000, words.L("the safe residual of EMT texts, 200 psi"), func(f float64) { s.run.Keep = f })
	cold := 0.0
	if s.run.Cold {
		cold = 1
	}
	add(groupWarn, "cold", words.L("Below freezing: 1 is yes"), "", cold, 1, words.L("20 to 40% off a battery: makers' guidance on cold"), func(f float64) { s.run.Cold = f == 1 })
	add(groupWarn, "crew", words.L("People who put back; 0 is the rig's crew"), "", float64(s.crew), 100, words.L("for the time left on Load up"), func(f float64) { s.crew = int(f) })
	for _, c := range rundown.Classes() {
		add(groupLong, c.ID, words.Said(c.Name), words.L("min"), s.run.Outs[c.ID], 600, words.F("%s; from memory", words.Said(c.Why)), func(f float64) { s.run.Outs[c.ID] = f })
	}
	for _, f := range runFamilies(n) {
		is, source := s.run.Fulls[f.family], words.L("as the department knows it")
		if t, ok := s.run.Full(f.item); ok && is == 0 {
			is, source = (t.Low+t.High)/2, words.F("%g to %g min, typical, from memory", t.Low, t.High)
		} else if is == 0 {
			source = words.L("one reading alone gives no time")
		}
		add(groupFull, f.family, f.name, words.L("min"), is, 2880, source, func(k float64) { s.run.Fulls[f.family] = k })
	}
	c := &s.look
	for _, x := range []struct {
		id, title string
		at        *float64
	}{{"last", words.L("Where it was last"), &c.LastPlace}, {"tarp", words.L("The tarp, and under it"), &c.Tarp}, {"holder", words.L("Who had it last"), &c.Holder},
		{"slots", words.L("Other slots of its rig"), &c.WrongSlot}, {"others", words.L("Other rigs and agencies"), &c.Others},
		{"sibling", words.L("Agencies, once a piece of the set went there"), &c.Sibling}, {"dim", words.L("Off what is seen of small or dark, or at night"), &c.Dim}} {
		add(groupChance, x.id, x.title, words.L("in 100"), *x.at*100, 100, words.L("from memory; your own record is better"), func(f float64) { *x.at = f / 100 })
	}
	return out
}

// runFamily is a family of pieces with a charge or a tank.
type runFamily struct {
	family, name string
	item         *model.Item
}

func runFamilies(n *now) []runFamily {
	lines := map[string][]int{}
	var order []string
	for i := range n.d.Items {
		it := &n.d.Items[i]
		for _, a := range it.Checks {
			if it.Family != "" && (a.Check == "battery" || a.Check == "bars" || a.Check == "fuel") {
				if len(lines[it.Family]) == 0 {
					order = append(order, it.Family)
				}
				lines[it.Family] = append(lines[it.Family], i)
				break
			}
		}
	}
	var out []runFamily
	for _, f := range order {
		i := lines[f][0]
		out = append(out, runFamily{f, strings.TrimRight(n.d.Items[i].Short(), " 0123456789"), &n.d.Items[i]})
	}
	return out
}

// groupRow is a row of Limits that opens a group of figures.
func (sh *Shell) groupRow(group, title, second string) rowDo {
	return rowDo{parts.RowView{ID: "limit-" + group, Title: title, Second: second, Tone: parts.Quiet, Go: "go"},
		func() { sh.open(newSumFigures(sh, group, title)) }}
}

// sumRow is the row of the sums on the page of limits.
func (sh *Shell) sumRow() rowDo {
	return rowDo{parts.RowView{ID: "limit-sums", Title: words.L("Figures of the sums"), Second: words.L("when it warns, what is out long, where to look"), Tone: parts.Quiet, Go: "go"},
		func() {
			sh.open(newRowList(words.L("Figures of the sums"), words.L("Touch what they are for"), func(*now) []rowDo { return sh.sumRows() }, nil))
		}}
}

func (sh *Shell) sumRows() []rowDo {
	return []rowDo{
		sh.groupRow(groupWarn, words.L("Minutes left"), words.L("at how many a line warns on Glance")),
		sh.groupRow(groupLong, words.L("Out long"), words.L("after how many minutes with nothing logged")),
		sh.groupRow(groupFull, words.L("Time of a full one"), words.L("battery or tank, for one reading")),
		sh.groupRow(groupChance, words.L("Where to look"), words.L("starting chances of Look for it")),
	}
}

// newSumFigures lists the figures of a group with their source; a touch
// changes one.
func newSumFigures(sh *Shell, group, title string) screen {
	rows := func(n *now) []rowDo {
		var out []rowDo
		for _, f := range sh.sumSettings().figures(n) {
			if f.group != group {
				continue
			}
			right, source := fmt.Sprintf("%d %s", f.is, f.unit), f.source
			if group == groupChance {
				source = "" // all of one source, and it stands beside them
			}
			if f.is == 0 {
				right = map[string]string{groupLong: words.L("never"), groupFull: words.L("not said")}[group]
				if right == "" {
					right = fmt.Sprintf("0 %s", f.unit)
				}
			}
			out = append(out, rowDo{n.shutRow(parts.RowView{ID: f.key, Title: f.title, Second: source, Right: right, Strong: true, Tone: parts.Quiet, Dim: true}),
				func() { sh.asOfficer(words.L("Limits"), func() { sh.open(newSumPad(sh, f)) }) }})
		}
		return out
	}
	var aside func(*now) (string, string)
	if group == groupChance {
		aside = func(*now) (string, string) {
			return words.L("How the order is got"), howWords(look.Formula, look.Source, look.Limits)
		}
	}
	return newRowList(title, words.L("Touch one to change it. All tablets of this file share it"), rows, aside)
}

// newSumPad types one figure.
func newSumPad(sh *Shell, f sumFigure) screen {
	said := words.F("Now %d %s. From 0 to %d.\nSource: %s.", f.is, f.unit, f.most, f.source)
	var p *numberPad
	p = newNumberPad(sh, f.title, said, false, func(k int) {
		if k > f.most {
			p.typed = ""
			p.words.SetText(parts.B(words.F("%d is too much.", k)) + "\n" + said)
			sh.refresh()
			return
		}
		sh.keep(f.key, strconv.Itoa(k))
		sh.sums = nil
		sh.back()
	})
	return p
}

// howWords are how a figure was got, a line each.
func howWords(formula, source, limits string) string {
	return parts.B(words.L("Formula:")) + " " + words.Said(formula) + "\n" + parts.B(words.L("Source:")) + " " + words.Said(source) + "\n" + parts.B(words.L("Limits:")) + " " + words.Said(limits)
}
