package stores

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/model"
)

// The words for what a change does.
const (
	Add     = "add"
	Alter   = "change"
	Remove  = "remove"
	Reorder = "reorder" // the rows of the table, Key is empty
)

// A Change is one difference between two inventories, for people. Key is the
// row's key; of a table without keys it names the row in words.
type Change struct {
	Table, Key, What string
	Columns          []Turn // of a new row those that are not blank
}

// A Turn is a cell and what it was and will be.
type Turn struct{ Column, Old, New string }

// String is the change in one line of words.
func (c Change) String() string {
	switch c.What {
	case Remove:
		return c.Table + ": " + c.Key + " goes"
	case Reorder:
		return c.Table + ": the rows stand in another order"
	}
	cells := make([]string, len(c.Columns))
	for i, t := range c.Columns {
		if cells[i] = fmt.Sprintf("%s %s becomes %s", t.Column, said(t.Old), said(t.New)); c.What == Add {
			cells[i] = t.Column + " " + said(t.New)
		}
	}
	verb := " changes: "
	if c.What == Add {
		verb = " is new: "
	}
	return c.Table + ": " + c.Key + verb + strings.Join(cells, ", ")
}

func said(cell string) string {
	if cell == "" {
		return "blank"
	}
	return say(cell)
}

// Diff is what makes new out of old: the patch, and each change for people.
// old.Patched(&patch) has the tables of new.
func Diff(old, new *model.Department) (model.InventoryPatch, []Change) {
	var patch model.InventoryPatch
	var changes []Change
	for _, t := range tables {
		changes = append(changes, t.diff(old, new, &patch)...)
	}
	return patch, changes
}

// diff adds what changes in the table to the patch.
func (t table[T]) diff(old, new *model.Department, into *model.InventoryPatch) (changes []Change) {
	was, is := *t.rows(old), *t.rows(new)
	wasKeys, isKeys := t.keys(was), t.keys(is)
	before, after := positions(wasKeys), positions(isKeys)
	var put []T
	var gone, would []string // would: the keys in order if only rows are put
	var stay []string        // those of both, in the new order
	for i, k := range wasKeys {
		if _, stays := after[k]; stays {
			would = append(would, k)
			continue
		}
		gone = append(gone, k)
		changes = append(changes, Change{Table: t.name, Key: t.key(&was[i]), What: Remove})
	}
	for i, k := range isKeys {
		c := Change{Table: t.name, Key: t.key(&is[i]), What: Add}
		var nothing T
		c.Columns = t.turns(&nothing, &is[i])
		if j, known := before[k]; known {
			stay = append(stay, k)
			c.What, c.Columns = Alter, t.turns(&was[j], &is[i])
		} else {
			would = append(would, k)
			c.Columns = slices.DeleteFunc(c.Columns, func(t Turn) bool { return t.New == "" })
		}
		if c.What == Add || len(c.Columns) > 0 {
			put, changes = append(put, is[i]), append(changes, c)
		}
	}
	moved := !slices.Equal(would, isKeys)
	if !slices.Equal(would[:len(stay)], stay) {
		changes = append(changes, Change{Table: t.name, What: Reorder})
	}
	switch {
	case t.keyless && (moved || len(changes) > 0):
		into.Whole = append(into.Whole, t.name)
		t.put(into, is)
	case !t.keyless:
		t.patch(into, put, gone)
		if moved {
			into.Order = with(into.Order, t.name, isKeys)
		}
	}
	return changes
}

func (t table[T]) patch(into *model.InventoryPatch, put []T, gone []string) {
	if len(put) > 0 {
		t.put(into, put)
	}
	if len(gone) > 0 {
		into.Remove = with(into.Remove, t.name, gone)
	}
}

func (t table[T]) put(into *model.InventoryPatch, rows []T) {
	if into.Put == nil {
		into.Put = &model.Department{}
	}
	*t.rows(into.Put) = slices.Clone(rows)
}

// keys are the rows' keys; of rows that are named the same, all but the first
// get a number.
func (t table[T]) keys(rows []T) []string {
	seen, keys := map[string]int{}, make([]string, len(rows))
	for i := range rows {
		k := t.key(&rows[i])
		if keys[i] = k; seen[k] > 0 {
			keys[i] = fmt.Sprintf("%s\x00%d", k, seen[k])
		}
		seen[k]++
	}
	return keys
}

// turns are the cells in which two rows differ.
func (t table[T]) turns(old, new *T) []Turn {
	var out []Turn
	for _, c := range t.columns {
		if a, b := c.get(old), c.get(new); a != b {
			out = append(out, Turn{c.name, a, b})
		}
	}
	var names []string
	for _, m := range []map[string]string{*t.extra(old), *t.extra(new)} {
		for name := range m {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range slices.Compact(names) {
		if a, b := (*t.extra(old))[name], (*t.extra(new))[name]; a != b {
			out = append(out, Turn{name, a, b})
		}
	}
	return out
}

func positions(keys []string) map[string]int {
	m := make(map[string]int, len(keys))
	for i, k := range keys {
		m[k] = i
	}
	return m
}

func with(m map[string][]string, table string, keys []string) map[string][]string {
	if m == nil {
		m = map[string][]string{}
	}
	m[table] = keys
	return m
}
