package ui

import (
	"fmt"
	"slices"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/loadup"
)

// memo keeps what was worked out of a picture. A picture never changes, so
// what it says is worked out once, and forgotten with it.
type memo struct {
	pic  *board.Picture
	kept map[string]any
}

// once works something out of the picture alone (never of the time, the
// settings or the glass), and after that remembers it. Whoever gets it leaves
// it as it is.
func once[T any](n *now, what string, work func() T) T {
	if n.memo.pic != n.pic {
		n.memo = memo{n.pic, map[string]any{}}
	}
	if got, ok := n.memo.kept[what].(T); ok {
		return got
	}
	got := work()
	n.memo.kept[what] = got
	return got
}

// account is the balance of a rig in the scene, of all rigs for none.
func (n *now) account(rig string) model.Account {
	return once(n, "account "+rig, func() model.Account { return n.s.Account(n.scene.ID, rig) })
}

// books are what is away from its place.
func (n *now) books() []model.PlaceRow { return once(n, "books", n.s.Books) }

// ready is what each rig can do, family by family, in the order of the table.
func (n *now) ready() []model.ReadyRow {
	return once(n, "ready", func() []model.ReadyRow {
		rows := n.s.Ready()
		slices.SortStableFunc(rows, func(a, b model.ReadyRow) int { return a.Lines[0] - b.Lines[0] })
		return rows
	})
}

// loads is the load order of a rig for somebody at a door.
func (n *now) loads(rig string, at *loadup.Door) []loadup.Load {
	door := "no door"
	if at != nil {
		door = fmt.Sprint(*at)
	}
	return once(n, "loads "+rig+" "+door, func() []loadup.Load { return loadup.List(n.s, rig, at) })
}
