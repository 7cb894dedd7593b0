package restock

import (
	"cmp"
	"slices"
	"strings"
	"time"
)

// A Need is a kind of piece of which one set takes so many.
type Need struct {
	Name       string
	Need, Have int
}

// A Lack is how many of a kind are wanting for one set more.
type Lack struct {
	Name string
	N    int
}

// Sets is how many whole sets can be used: the least, over the kinds, of what
// is there divided by what a set takes. Lacks are the kinds that keep the next
// set from being whole, the missing key by its name; a percentage would hide
// it. A set that takes nothing is no set.
func Sets(needs []Need) (sets int, lacks []Lack) {
	sets = -1
	for _, k := range needs {
		if k.Need > 0 {
			if n := max(0, k.Have) / k.Need; sets < 0 || n < sets {
				sets = n
			}
		}
	}
	if sets < 0 {
		return 0, nil
	}
	for _, k := range needs {
		if k.Need > 0 && max(0, k.Have)/k.Need == sets {
			lacks = append(lacks, Lack{k.Name, k.Need - (max(0, k.Have) - sets*k.Need)})
		}
	}
	return sets, lacks
}

// A Lot is pieces that share a date after which they are not used. Text is
// the date as it was written; Last is the last good day, read from it.
type Lot struct {
	Name  string
	N     int
	Text  string
	Last  time.Time
	Known bool // the date could be read
}

// dates are the forms that are read. A month without a day is good to its
// end. Forms that two countries read differently are not.
var dates = []struct {
	form  string
	month bool
}{{"2006-01-02", false}, {"2006-01", true}, {"2006/01/02", false}, {"2 Jan 2006", false}, {"Jan 2006", true}, {"01/2006", true}}

// NewLot reads the date of a lot. One that cannot be read is not known and is
// to be asked again.
func NewLot(name string, n int, text string) Lot {
	l := Lot{Name: name, N: n, Text: text}
	for _, f := range dates {
		if t, err := time.Parse(f.form, strings.TrimSpace(text)); err == nil {
			if f.month {
				t = t.AddDate(0, 1, -1)
			}
			l.Last, l.Known = t, true
			break
		}
	}
	return l
}

// Expired tells whether the last good day is past on the given day. A date
// that is not known is not said to be past, and not to be good either.
func (l Lot) Expired(today time.Time) bool {
	y, m, d := today.Date()
	return l.Known && l.Last.Before(time.Date(y, m, d, 0, 0, 0, 0, time.UTC))
}

// ByExpiry is the lots, the soonest to expire first; those whose date is not
// known come before all, as somebody has to read them again.
func ByExpiry(lots []Lot) []Lot {
	out := slices.Clone(lots)
	slices.SortStableFunc(out, sooner)
	return out
}

// sooner orders lots as ByExpiry says.
func sooner(a, b Lot) int {
	if a.Known != b.Known {
		if b.Known {
			return -1
		}
		return 1
	}
	return cmp.Or(a.Last.Compare(b.Last), strings.Compare(a.Name, b.Name))
}

// An OrderLine is what to order of one line of the store, in the supplier's
// packs.
type OrderLine struct {
	Stock, Name string
	Packs, Pack int
}

// Pieces is how many come with the order.
func (o OrderLine) Pieces() int { return o.Packs * o.Pack }

// An Order is the lines for one supplier. The supplier is the column
// "supplier" of the stock table, if a department keeps it.
type Order struct {
	Supplier string // empty: not known
	Lines    []OrderLine
}

// Orders is what the rows say to order, by supplier and name.
func Orders(rows []Row) []Order {
	by := map[string][]OrderLine{}
	for _, r := range rows {
		if r.Order <= 0 || r.Stock == nil {
			continue
		}
		pack := max(1, r.Stock.Pack)
		who := strings.TrimSpace(r.Stock.Extra["supplier"])
		by[who] = append(by[who], OrderLine{r.Stock.ID, r.Name, (r.Order + pack - 1) / pack, pack})
	}
	var out []Order
	for who, lines := range by {
		slices.SortFunc(lines, func(a, b OrderLine) int {
			return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.Stock, b.Stock))
		})
		out = append(out, Order{who, lines})
	}
	slices.SortFunc(out, func(a, b Order) int { return strings.Compare(a.Supplier, b.Supplier) })
	return out
}
