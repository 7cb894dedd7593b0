// Package restock says what was used, what the station's store gives, and
// what to order.
package restock

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"tarpside/model"
)

// ServiceZ is the standard normal deviate for a service level of about 95 %,
// one-sided, as inventory textbooks give it (from memory).
const ServiceZ = 1.65

// A Row is what is to be replaced by one line of the store, or by one name
// where no line of the store refills it.
type Row struct {
	Name         string
	By           []RigCount
	Used         int // logged, lost, and where a store refills it also bagged or tagged
	FoundAtCount int
	Stock        *model.Stock // nil: no line of the store
	Before       int          // in the store now
	ReorderPoint float64      // rounded to two decimals
	Order        int          // pieces, in whole packs; 0: none
}

// RigCount is how many pieces of a rig are to be replaced.
type RigCount struct {
	Rig string
	N   int
}

// Total is how many pieces are to be replaced.
func (r Row) Total() int { return r.Used + r.FoundAtCount }

// Issue is how many the store can give now.
func (r Row) Issue() int { return min(r.Total(), r.Before) }

// Backorder is how many the store cannot give.
func (r Row) Backorder() int { return r.Total() - r.Issue() }

// After is what the store has once they are given.
func (r Row) After() int { return r.Before - r.Issue() }

// ByRig is the share of each rig, "R41:2; E42:1".
func (r Row) ByRig() string {
	var parts []string
	for _, x := range r.By {
		parts = append(parts, fmt.Sprintf("%s:%d", x.Rig, x.N))
	}
	return strings.Join(parts, "; ")
}

// Point is the reorder point as the table prints it.
func (r Row) Point() string { return strconv.FormatFloat(r.ReorderPoint, 'f', -1, 64) }

// Of is the row of a line of the store from which so many are wanted.
func Of(st *model.Stock, need int) Row {
	r := Row{Name: st.Name, Used: max(0, need), Stock: st}
	r.order(0)
	return r
}

// List is what is to be replaced, sorted by name and store line.
func List(s *model.State) []Row {
	type key struct{ name, stock string }
	rows := map[key]*Row{}
	for i := range s.Dept.Items {
		it := &s.Dept.Items[i]
		l := s.Line(i)
		used, lost := l.N(model.Place{Kind: model.Used}), l.N(model.Place{Kind: model.Lost})
		found := s.FoundAtCount(i)
		n := used - found + lost
		stock := s.Dept.StockLine(it.Stock)
		k := key{name: it.Name}
		if stock != nil {
			k = key{stock.Name, stock.ID}
			n += max(l.N(model.Place{Kind: model.Bagged}), l.Tagged())
		}
		if n+found == 0 {
			continue
		}
		if rows[k] == nil {
			rows[k] = &Row{Name: k.name, Stock: stock}
		}
		rows[k].Used += n
		rows[k].FoundAtCount += found
		rows[k].add(it.Rig, n+found)
	}
	var out []Row
	for _, r := range rows {
		if r.Stock != nil {
			r.order(s.Restocked(r.Stock.ID))
		}
		slices.SortFunc(r.By, func(a, b RigCount) int { return strings.Compare(a.Rig, b.Rig) })
		out = append(out, *r)
	}
	slices.SortFunc(out, func(a, b Row) int {
		return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.stock(), b.stock()))
	})
	return out
}

// ToOrder are the rows from which something is to be ordered: those of List,
// and the lines of the store that are low although nothing of them is to be
// replaced any more. What was taken from a shelf is not there again because it
// lies on the rig.
func ToOrder(s *model.State) []Row {
	var out []Row
	listed := map[string]bool{}
	for _, r := range List(s) {
		if r.Stock == nil {
			continue
		}
		listed[r.Stock.ID] = true
		if r.Order > 0 {
			out = append(out, r)
		}
	}
	for i := range s.Dept.Stock {
		st := &s.Dept.Stock[i]
		r := Row{Name: st.Name, Stock: st}
		r.order(s.Restocked(st.ID))
		if !listed[st.ID] && r.Order > 0 {
			out = append(out, r)
		}
	}
	return out
}

// OnShelf is the line of the store as it is written down when so many are on
// its shelf now: counted, or with what came. The log goes on subtracting all
// that was ever taken from it.
func OnShelf(s *model.State, st model.Stock, now int) model.Stock {
	st.OnHand = now + s.Restocked(st.ID)
	return st
}

func (r Row) stock() string {
	if r.Stock == nil {
		return ""
	}
	return r.Stock.ID
}

func (r *Row) add(rig string, n int) {
	for i := range r.By {
		if r.By[i].Rig == rig {
			r.By[i].N += n
			return
		}
	}
	r.By = append(r.By, RigCount{rig, n})
}

// order works out what the store has, its reorder point, and the fewest whole
// packs that lift it above that point.
func (r *Row) order(taken int) {
	st := r.Stock
	r.Before = max(0, st.OnHand-taken)
	r.ReorderPoint = Point(st.WeeklyMean, st.WeeklySD, st.LeadWeeks)
	level := r.After() - r.Backorder()
	if pack := max(1, st.Pack); float64(level) <= r.ReorderPoint {
		r.Order = (int(math.Floor(r.ReorderPoint-float64(level)))/pack + 1) * pack
	}
}

// FullSet is how many the store should have after an order has come: more than
// its reorder point, in whole packs, and never fewer than what is enough for 19
// of 20 waits as uses come by ones and twos. It is 0 without a line of the
// store.
func (r Row) FullSet() int {
	if r.Stock == nil {
		return 0
	}
	least := max(int(math.Floor(r.ReorderPoint))+1, SlowMover(r.Stock).Point)
	pack := max(1, r.Stock.Pack)
	return (least + pack - 1) / pack * pack
}

// Point is the reorder point for a use a week of mean and standard deviation,
// and a wait of so many weeks: mean x lead + z x sd x sqrt(lead), rounded to
// two decimals.
func Point(mean, sd, lead float64) float64 {
	p := mean*lead + ServiceZ*sd*math.Sqrt(lead)
	p, _ = strconv.ParseFloat(strconv.FormatFloat(p, 'f', 2, 64), 64)
	return p
}
