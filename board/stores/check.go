package stores

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"tarpside/model"
)

// shortest is what fits on a tile.
const shortest = 18

// crossCheck looks at what rows say about each other. A cell that has a
// problem already is taken for nothing here.
func (l *load) crossCheck() {
	for i, r := range l.d.Rigs {
		l.refer(model.TableRigs, i, "agency", r.Agency, model.TableAgencies, "or blank")
	}
	for i, s := range l.d.Slots {
		l.refer(model.TableSlots, i, "rig", s.Rig, model.TableRigs, "")
	}
	for i, m := range l.d.Members {
		l.refer(model.TableMembers, i, "agency", m.Agency, model.TableAgencies, "or blank")
	}
	for i, p := range l.d.Pulls {
		l.refer(model.TablePulls, i, "item", p.Item, model.TableItems, "or blank and a name")
	}
	l.checkCase()
	l.shortNames()
	for i := range l.d.Items {
		l.item(i, &l.d.Items[i])
	}
	for i, r := range l.d.Rules {
		l.rule(i, r)
	}
	l.groups()
	l.loops()
}

// at notes a problem of a row of the department and takes its cell out of the
// checks that follow.
func (l *load) at(table string, i int, column, wrong, right string) {
	ln := l.sheets[table].lines[i]
	ln.bad[column] = true
	l.fault(table, ln.row, column, wrong, right)
}

// fine says that the cells of a row have no problem so far.
func (l *load) fine(table string, i int, columns ...string) bool {
	for _, c := range columns {
		if l.sheets[table].lines[i].bad[c] {
			return false
		}
	}
	return true
}

// refer checks a reference to a key of another table. orBlank says what a
// blank means; without it a blank is wrong. It is true when the reference
// leads to a row.
func (l *load) refer(table string, i int, column, key, to, orBlank string) bool {
	s := l.sheets[to]
	right := strings.TrimSpace("a row of " + file(to) + " " + orBlank)
	_, known := s.keys[key]
	switch {
	case !l.fine(table, i, column), s.broken:
		return false
	case key == "" && orBlank != "":
		return false
	case key == "":
		l.at(table, i, column, "blank", right)
		return false
	case !known:
		l.at(table, i, column, "there is no "+say(key)+" in "+file(to), right)
	}
	return known
}

// checkCase: a reading names its checks in any case.
func (l *load) checkCase() {
	lower := map[string]int{}
	for i, c := range l.d.Checks {
		j, twice := lower[strings.ToLower(c.ID)]
		if twice && l.d.Checks[j].ID != c.ID {
			l.at(model.TableChecks, i, "check", fmt.Sprintf("%s differs from %s in its case only", say(c.ID), say(l.d.Checks[j].ID)), "an id of its own")
		}
		lower[strings.ToLower(c.ID)] = i
	}
}

// shortNames: two tiles of a rig must not read the same. A name that is short
// enough by itself stands on its tile too.
func (l *load) shortNames() {
	seen := map[[2]string]int{}
	tile := func(it *model.Item) [2]string { return [2]string{it.Rig, strings.ToLower(it.Short())} }
	for i := range l.d.Items {
		if l.d.Items[i].ShortName == "" {
			seen[tile(&l.d.Items[i])] = i
		}
	}
	for i := range l.d.Items {
		it := &l.d.Items[i]
		if it.ShortName == "" || !l.fine(model.TableItems, i, "short_name") {
			continue
		}
		if n := utf8.RuneCountInString(it.ShortName); n > shortest {
			l.at(model.TableItems, i, "short_name", fmt.Sprintf("%s has %d characters", say(it.ShortName), n), fmt.Sprintf("%d at most", shortest))
		}
		if j, twice := seen[tile(it)]; twice {
			l.at(model.TableItems, i, "short_name", fmt.Sprintf("%s is %s on this rig already", say(it.ShortName), l.d.Items[j].ID), "another short name")
			continue
		}
		seen[tile(it)] = i
	}
}

func (l *load) item(i int, it *model.Item) {
	const t = model.TableItems
	rig := l.refer(t, i, "rig", it.Rig, model.TableRigs, "")
	if l.refer(t, i, "slot", it.Slot, model.TableSlots, "or blank for no home yet") {
		s := l.d.Slot(it.Slot)
		if rig && s != nil && l.isRig(s.Rig) && s.Rig != it.Rig {
			l.at(t, i, "slot", fmt.Sprintf("slot %s is on %s, the line on %s", it.Slot, s.Rig, it.Rig), "a slot on "+it.Rig)
		}
	}
	if l.refer(t, i, "kit", it.Kit, t, "or blank") {
		l.kit(i, it, rig)
	}
	l.refer(t, i, "stock", it.Stock, model.TableStock, "or blank")
	if it.LeastUsable > it.Quantity && l.fine(t, i, "least_usable", "quantity") {
		l.at(t, i, "least_usable", fmt.Sprintf("%d is more than the %d there are", it.LeastUsable, it.Quantity), fmt.Sprintf("a whole number from 0 to %d, or blank for all", it.Quantity))
	}
	if it.Critical && strings.TrimSpace(it.Family) == "" && l.fine(t, i, "critical", "family") {
		l.at(t, i, "family", "blank on a critical line", "the family that it counts for")
	}
	if l.fine(t, i, "checks") && !l.sheets[model.TableChecks].broken {
		for _, a := range it.Checks {
			l.ask(i, a)
		}
	}
}

func (l *load) isRig(id string) bool {
	_, ok := l.sheets[model.TableRigs].keys[id]
	return ok
}

// kit checks the kit that an item lives in.
func (l *load) kit(i int, it *model.Item, rig bool) {
	const t = model.TableItems
	j := l.d.ItemIndex(it.Kit)
	if j < 0 {
		return
	}
	k := &l.d.Items[j]
	switch {
	case k.Kind != model.Kit && l.fine(t, j, "kind"):
		l.at(t, i, "kit", fmt.Sprintf("%s is a line of kind %s", it.Kit, k.Kind), "a line of kind kit")
	case rig && l.isRig(k.Rig) && k.Rig != it.Rig:
		l.at(t, i, "kit", fmt.Sprintf("kit %s is on %s, the line on %s", it.Kit, k.Rig, it.Rig), "a kit on "+it.Rig)
	}
}

// ask checks one check of an item against the table of checks.
func (l *load) ask(i int, a model.Ask) {
	const t = model.TableItems
	if _, ok := l.sheets[model.TableChecks].keys[a.Check]; !ok {
		l.at(t, i, "checks", "there is no "+say(a.Check)+" in "+file(model.TableChecks), "a row of "+file(model.TableChecks))
		return
	}
	j := slices.IndexFunc(l.d.Checks, func(c model.Check) bool { return c.ID == a.Check })
	if j < 0 || !a.HasLimit || !l.fine(model.TableChecks, j, "answer") {
		return
	}
	switch c := &l.d.Checks[j]; {
	case !c.Number:
		l.at(t, i, "checks", fmt.Sprintf("%s has a limit, its answers are %s", a.Check, c.Answer), a.Check)
	case a.Limit < c.Min || a.Limit > c.Max:
		l.at(t, i, "checks", fmt.Sprintf("%s>=%s is outside the range of the check", a.Check, figure(a.Limit)),
			fmt.Sprintf("a limit from %s to %s", figure(c.Min), figure(c.Max)))
	}
}
