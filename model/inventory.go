package model

import (
	"cmp"
	"maps"
	"slices"
)

// An InventoryPatch is what a stores act changes. Put holds rows that are new
// or that replace the row with the same key; Remove lists keys by table.
// Stow rules and pull lists have no key: Whole names those replaced whole.
// Order lists the keys of a table whose rows are to stand in another order.
type InventoryPatch struct {
	Put    *Department         `json:"put,omitempty"`
	Remove map[string][]string `json:"remove,omitempty"`
	Whole  []string            `json:"whole,omitempty"`
	Order  map[string][]string `json:"order,omitempty"`
}

// The tables of the inventory, by the names of their files.
const (
	TableRigs     = "rigs"
	TableSlots    = "slots"
	TableItems    = "items"
	TableRules    = "stow_rules"
	TableChecks   = "checks"
	TableMembers  = "members"
	TableAgencies = "agencies"
	TablePlaces   = "places"
	TableStock    = "stock"
	TablePulls    = "pull_lists"
)

// Tables are the names of all tables of the inventory.
var Tables = []string{TableRigs, TableSlots, TableItems, TableRules, TableChecks, TableMembers, TableAgencies, TablePlaces, TableStock, TablePulls}

// Patched is the department after the patch, indexed; d stays as it is. In
// each table Remove goes first, then rows of Put replace the row with their
// key where it stands, or are added at the end, then Order sorts: rows that it
// does not list keep their order behind those that it does. So patches made
// apart on two tablets both hold. Rows of a table without a key count only
// where Whole names it.
func (d *Department) Patched(p *InventoryPatch) *Department {
	n, put := d.Clone(), p.Put
	if put == nil {
		put = &Department{}
	}
	n.Rigs = patched(n.Rigs, put.Rigs, p, TableRigs, func(x Rig) string { return x.ID })
	n.Slots = patched(n.Slots, put.Slots, p, TableSlots, func(x Slot) string { return x.ID })
	n.Items = patched(n.Items, put.Items, p, TableItems, func(x Item) string { return x.ID })
	n.Rules = patched(n.Rules, put.Rules, p, TableRules, nil)
	n.Checks = patched(n.Checks, put.Checks, p, TableChecks, func(x Check) string { return x.ID })
	n.Members = patched(n.Members, put.Members, p, TableMembers, func(x Member) string { return x.ID })
	n.Agencies = patched(n.Agencies, put.Agencies, p, TableAgencies, func(x Agency) string { return x.Code })
	n.Places = patched(n.Places, put.Places, p, TablePlaces, func(x PlaceName) string { return x.Place })
	n.Stock = patched(n.Stock, put.Stock, p, TableStock, func(x Stock) string { return x.ID })
	n.Pulls = patched(n.Pulls, put.Pulls, p, TablePulls, nil)
	n.Index()
	for i := range n.Items { // two patches made apart may put two kits into each other
		if len(n.loop(n.Items[i].ID)) > 0 {
			n.Items[i].Kit = ""
		}
	}
	return n.Index()
}

// patched works on rows of its own, which Clone has made; none left is nil.
func patched[T any](rows, put []T, p *InventoryPatch, table string, key func(T) string) []T {
	switch {
	case slices.Contains(p.Whole, table):
		rows = slices.Clone(put)
	case key != nil:
		gone := index(p.Remove[table], itself)
		rows = slices.DeleteFunc(rows, func(x T) bool { return at(gone, key(x)) >= 0 })
		stands := index(rows, key)
		for _, x := range put {
			if i, ok := stands[key(x)]; ok {
				rows[i] = x
				continue
			}
			stands[key(x)] = len(rows)
			rows = append(rows, x)
		}
		if order := p.Order[table]; order != nil {
			listed := index(order, itself)
			rank := func(x T) int {
				if i, ok := listed[key(x)]; ok {
					return i
				}
				return len(order)
			}
			slices.SortStableFunc(rows, func(a, b T) int { return cmp.Compare(rank(a), rank(b)) })
		}
	}
	if len(rows) == 0 {
		return nil
	}
	return rows
}

func itself(key string) string { return key }

// edited takes a change of the inventory in. Names, slots and limits count
// from now on; a quantity or a kit waits until the pieces are home.
func (s *State) edited(p *InventoryPatch) {
	if p == nil {
		return
	}
	s.want = s.want.Patched(p)
	s.refit()
	s.barrier = s.folded
}

// release lets a waiting change in once its pieces are home.
func (s *State) release() {
	for _, id := range s.held {
		if i := s.Dept.ItemIndex(id); i >= 0 && s.away(i) == 0 {
			s.refit()
			return
		}
	}
}

// refit puts the wanted inventory in force as far as the pieces allow, and
// brings the lines over.
func (s *State) refit() {
	old, lines := s.Dept, s.lines
	next, held := s.waiting()
	s.held = slices.Sorted(maps.Keys(held))
	s.Dept = next.Index()
	s.lines = make([]*Line, len(next.Items))
	for i := range next.Items {
		j := old.ItemIndex(next.Items[i].ID)
		switch {
		case j < 0:
			s.lines[i] = s.atHome(i)
		case sameAccount(&next.Items[i], &old.Items[j]):
			s.lines[i] = lines[j]
		default:
			s.lines[i] = s.recounted(i, lines[j])
		}
	}
	for i := range s.lines { // a new home may be in a kit that is away
		if n := s.away(i); n > s.lines[i].Peak {
			s.edit(i).Peak = n
		}
	}
	for i, sc := range s.scenes {
		if len(sc.Unknown) > 0 {
			c := *sc
			c.Unknown = slices.DeleteFunc(slices.Clone(sc.Unknown), func(id string) bool { return s.Dept.ItemIndex(id) >= 0 })
			s.scenes[i] = &c
		}
	}
	if !slices.Equal(s.lines, lines) {
		s.barrier = s.folded
	}
}

// waiting is the wanted inventory as far as the pieces allow it now, and the
// lines whose books stay as they are: those that are out, and the kits that
// they live in. Two kits never end up in each other.
func (s *State) waiting() (next *Department, held map[string]bool) {
	old := s.Dept
	next, held = s.want.Clone(), map[string]bool{}
	hold := func(was *Item) {
		next.hold(was, s.want.ItemIndex(was.ID))
		held[was.ID] = true
	}
	for i := range old.Items {
		was := &old.Items[i]
		if want := s.want.Item(was.ID); s.away(i) > 0 && (want == nil || !sameAccount(want, was)) {
			hold(was)
		}
	}
	for again := true; again; {
		again = false
		next.Index()
		for i := range old.Items {
			was := &old.Items[i]
			if !held[was.ID] {
				continue
			}
			must := next.loop(was.ID)
			if k := next.Item(was.Kit); k == nil || k.Kind != Kit {
				must = append(must, was.Kit)
			}
			for _, id := range must {
				if k := old.Item(id); k != nil && !held[id] {
					hold(k)
					again = true
				}
			}
		}
	}
	return next, held
}

// loop lists the kits round a loop that the line is in, none if it is in none.
func (d *Department) loop(id string) []string {
	var met []string
	for it := d.Item(id); it != nil && !slices.Contains(met, it.ID); it = d.Item(it.Kit) {
		if met = append(met, it.ID); it.Kit == id {
			return met
		}
	}
	return nil
}

// sameAccount tells whether two versions of a line have the same books.
func sameAccount(a, b *Item) bool {
	return a.Quantity == b.Quantity && a.Kit == b.Kit && a.Rig == b.Rig && a.Kind == b.Kind
}

// hold keeps the books of a line as they are: its quantity, kind, kit and rig.
func (d *Department) hold(was *Item, at int) {
	if at < 0 {
		d.Items = append(d.Items, *was)
		return
	}
	it := &d.Items[at]
	it.Quantity, it.Kind, it.Kit, it.Rig = was.Quantity, was.Kind, was.Kit, was.Rig
}

// recounted is a line that is wholly home, with its new quantity in its new
// home place.
func (s *State) recounted(i int, was *Line) *Line {
	c := *was
	c.Stacks = s.atHome(i).Stacks
	n := s.Dept.Items[i].Quantity
	c.TaggedHome, c.TaggedOut = min(was.TaggedHome, n), 0
	c.Doubt = min(was.Doubt, n-c.TaggedHome)
	return &c
}

// Wanted is the inventory as last edited; it differs from Dept while pieces
// whose quantity or kit changed are still out.
func (s *State) Wanted() *Department { return s.want }

// Held lists the lines whose change of quantity or kit waits for their pieces.
func (s *State) Held() []string { return s.held }
