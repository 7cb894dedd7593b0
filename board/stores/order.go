package stores

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
)

// rule checks one stow rule: both pieces live in slots of one rig.
func (l *load) rule(i int, r model.StowRule) {
	const t = model.TableRules
	first := l.shelved(i, "first", r.First)
	then := l.shelved(i, "then", r.Then)
	if first != nil && then != nil && first.Rig != then.Rig && l.isRig(first.Rig) && l.isRig(then.Rig) {
		l.at(t, i, "then", fmt.Sprintf("%s is on %s, %s on %s", r.Then, then.Rig, r.First, first.Rig), "two pieces of one rig")
	}
	if r.Closes == model.BothEnds && strings.TrimSpace(r.Group) == "" && l.fine(t, i, "group") {
		l.at(t, i, "group", "blank with both_ends", "one name for all the rules of the bay")
	}
}

// shelved is the line that a rule names, nil if it is not one that stands in a
// slot by itself.
func (l *load) shelved(i int, column, id string) *model.Item {
	const t, right = model.TableRules, "a line that lives in a slot"
	if !l.refer(t, i, column, id, model.TableItems, "") {
		return nil
	}
	it := l.d.Item(id)
	switch {
	case it == nil: // its row has a problem of its own
	case it.Kit != "":
		l.at(t, i, column, fmt.Sprintf("%s lives in kit %s", id, it.Kit), right)
		return nil
	case it.Slot == "" && l.fine(model.TableItems, l.d.ItemIndex(id), "slot"):
		l.at(t, i, column, id+" has no home yet", right)
		return nil
	}
	return it
}

// groups checks the through bays: each is closed at two doors, and a piece
// stands in one bay.
func (l *load) groups() {
	const t = model.TableRules
	type bay struct {
		row   int      // the first rule of the group
		doors []string // where its closing pieces stand, by rule
		whole bool     // all of them are known
	}
	bays, names, bayOf := map[string]*bay{}, []string{}, map[string]string{}
	for i, r := range l.d.Rules {
		if r.Closes != model.BothEnds || !l.fine(t, i, "closes", "group") {
			continue
		}
		b := bays[r.Group]
		if b == nil {
			b = &bay{row: i, whole: true}
			bays[r.Group], names = b, append(names, r.Group)
		}
		door, ok := l.door(r.Then)
		if b.whole = b.whole && ok && l.fine(t, i, "then"); !slices.Contains(b.doors, door) {
			b.doors = append(b.doors, door)
		}
		if g, ok := bayOf[r.First]; ok && g != r.Group {
			l.at(t, i, "first", fmt.Sprintf("%s is in group %s already", r.First, g), "one both_ends group for a piece")
			continue
		}
		bayOf[r.First] = r.Group
	}
	for _, name := range names {
		if b := bays[name]; b.whole && len(b.doors) != 2 {
			l.at(t, b.row, "then", fmt.Sprintf("the pieces that close group %s are behind %s: %s", name, count(len(b.doors), "door"), strings.Join(b.doors, ", ")),
				"pieces behind exactly two doors (compartment and lap)")
		}
	}
}

// door is the door of an item's slot, in words.
func (l *load) door(id string) (string, bool) {
	it := l.d.Item(id)
	if it == nil {
		return "", false
	}
	s := l.d.Slot(it.Slot)
	if s == nil {
		return "", false
	}
	sheet := l.sheets[model.TableSlots]
	i := slices.IndexFunc(l.d.Slots, func(x model.Slot) bool { return x.ID == it.Slot })
	ok := !sheet.lines[i].bad["compartment"] && !sheet.lines[i].bad["lap"] && !sheet.lines[i].bad["rig"]
	return fmt.Sprintf("%s %s lap %d", s.Rig, s.Compartment, s.Lap), ok
}

// loops finds where "contents before their kit" and "first before then" come
// round to a piece again, taking row after row: the row that closes a loop is
// named with the loop, piece by piece, and left out of what follows.
func (l *load) loops() {
	after := make([][]int, len(l.d.Items))
	add := func(from, to string, table string, row int, column string) {
		i, j := l.d.ItemIndex(from), l.d.ItemIndex(to)
		if i < 0 || j < 0 || !l.fine(table, row, column) {
			return
		}
		if way := path(after, j, i); way != nil {
			names := []string{from}
			for _, k := range way {
				names = append(names, l.d.Items[k].ID)
			}
			l.at(table, row, column, "a loop: "+strings.Join(names, " before "), "an order that comes to an end")
			return
		}
		after[i] = append(after[i], j)
	}
	for i, it := range l.d.Items {
		add(it.ID, it.Kit, model.TableItems, i, "kit")
	}
	for i, r := range l.d.Rules {
		if l.fine(model.TableRules, i, "first") {
			add(r.First, r.Then, model.TableRules, i, "then")
		}
	}
}

// path is a shortest way from one point to another, both included, nil if
// there is none.
func path(after [][]int, from, to int) []int {
	came := map[int]int{from: from}
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if at == to {
			way := []int{at}
			for at != from {
				at = came[at]
				way = append(way, at)
			}
			slices.Reverse(way)
			return way
		}
		for _, next := range after[at] {
			if _, been := came[next]; !been {
				came[next] = at
				queue = append(queue, next)
			}
		}
	}
	return nil
}
