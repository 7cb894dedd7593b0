package restock

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"tarpside/model"
)

// A KitSet is a kit as a set that can be used. Key is what keeps it from being
// usable, the missing key by its name; Lacks is what keeps it from being
// whole. What is used up is for the restock and is no key.
type KitSet struct {
	Line          int
	Usable, Whole bool
	Key, Lacks    []Lack
}

// Kits are the kits that hold anything, those that cannot be used first, then
// those that are short, in the order of the inventory.
func Kits(s *model.State) []KitSet {
	var out []KitSet
	for i := range s.Dept.Items {
		if s.Dept.Items[i].Kind != model.Kit || len(s.Dept.Inside(i)) == 0 {
			continue
		}
		out = append(out, kitSet(s, i))
	}
	rank := func(k KitSet) int {
		switch {
		case !k.Usable:
			return 0
		case !k.Whole:
			return 1
		}
		return 2
	}
	slices.SortStableFunc(out, func(a, b KitSet) int { return cmp.Or(rank(a)-rank(b), a.Line-b.Line) })
	return out
}

func kitSet(s *model.State, kit int) KitSet {
	var least, full []Need
	in := model.Place{Kind: model.InKit, Name: s.Dept.Items[kit].ID}
	for _, c := range s.Dept.Inside(kit) {
		it := &s.Dept.Items[c]
		if it.Kind == model.Consumable {
			continue
		}
		have := max(0, s.Line(c).N(in)-s.Line(c).Tagged()+s.Line(c).TaggedOut)
		need := it.LeastUsable
		if need == model.Blank {
			need = it.Quantity
		}
		least = append(least, Need{it.Short(), need, have})
		full = append(full, Need{it.Short(), it.Quantity, have})
	}
	k := KitSet{Line: kit}
	k.Usable, k.Key = whole(least)
	k.Whole, k.Lacks = whole(full)
	return k
}

// whole tells whether one set can be made, and what is wanting for it. A set
// that takes nothing is whole.
func whole(needs []Need) (bool, []Lack) {
	sets, lacks := Sets(needs)
	if sets > 0 || len(lacks) == 0 {
		return true, nil
	}
	// every kind that has too few is wanting, not only the worst
	lacks = nil
	for _, k := range needs {
		if k.Need > max(0, k.Have) {
			lacks = append(lacks, Lack{k.Name, k.Need - max(0, k.Have)})
		}
	}
	return false, lacks
}

// ExpiryCheck is the check whose lines have a date.
const ExpiryCheck = "expiry"

// ExpiryColumn is the column of the inventory, or of the store, with the last
// good day: "2027-03", or lots as "6 2027-03; 6 2028-01".
const ExpiryColumn = "expires"

// A Dated is a lot of a line of the inventory or of the store.
type Dated struct {
	Lot
	Item  string // the line of the inventory, "" for the store
	Stock string
}

// Dates are the lots with a date, and the lines that should have one and have
// none, the soonest to expire first; those without a date that can be read
// come before all.
func Dates(d *model.Department) []Dated {
	var out []Dated
	for i := range d.Items {
		it := &d.Items[i]
		_, asks := it.Ask(ExpiryCheck)
		text := strings.TrimSpace(it.Extra[ExpiryColumn])
		if asks || text != "" {
			out = append(out, lots(Dated{Item: it.ID}, it.Short(), it.Quantity, text)...)
		}
	}
	for i := range d.Stock {
		st := &d.Stock[i]
		if text := strings.TrimSpace(st.Extra[ExpiryColumn]); text != "" {
			out = append(out, lots(Dated{Stock: st.ID}, st.Name, st.OnHand, text)...)
		}
	}
	slices.SortStableFunc(out, func(a, b Dated) int { return sooner(a.Lot, b.Lot) })
	return out
}

// lots reads "6 2027-03; 6 2028-01", or one date for all.
func lots(of Dated, name string, n int, text string) []Dated {
	var out []Dated
	for _, part := range strings.Split(text, ";") {
		part = strings.TrimSpace(part)
		of.Lot = NewLot(name, n, part)
		if k, rest, ok := strings.Cut(part, " "); ok && !of.Known {
			if count := number(k); count > 0 {
				if lot := NewLot(name, count, rest); lot.Known {
					of.Lot = lot
				}
			}
		}
		out = append(out, of)
	}
	return out
}

// number is a small whole number, 0 if it is none.
func number(text string) int {
	n := 0
	for _, r := range text {
		if r < '0' || r > '9' || n > 1e6 {
			return 0
		}
		n = n*10 + int(r-'0')
	}
	return n
}

// DaysTo is how many days are left to the last good day, below 0 if it is
// past.
func (l Lot) DaysTo(today time.Time) int {
	y, m, d := today.Date()
	return int(l.Last.Sub(time.Date(y, m, d, 0, 0, 0, 0, time.UTC)).Hours() / 24)
}

// How the figures of the store are got, for those who ask.
const (
	Formula = "order at mean x lead + z x sd x sqrt(lead), z 1.65; slow lines: the fewest that are enough in 19 of 20 waits (Poisson); order whole packs until that is passed"
	Source  = "the standard formula of inventory textbooks; the table of z is from memory"
	Limits  = "weekly means of the stock table; under ten uses a year the formula is noise: set the least and the most by hand"
)
