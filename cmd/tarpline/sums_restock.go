package main

import (
	"fmt"
	"io"
	"strings"

	"tarpside/model"
	"tarpside/model/restock"
	"tarpside/model/sum"
)

// sumRestock says what a line of the store can give, and what to order.
func sumRestock(args []string, out io.Writer) error {
	g := readSum("restock", args, "need have mean sd lead pack", "")
	st := model.Stock{ID: "store", Name: "store", Pack: g.whole("pack", 1, 1, 10000)}
	need := g.whole("need", 0, 0, 100000)
	have := g.whole("have", 0, 0, 100000)
	st.WeeklyMean = g.must("mean", 0, 1000)
	st.WeeklySD = g.number("sd", 0, 0, 1000)
	st.LeadWeeks = g.must("lead", 0, 52)
	g.noPlain()
	if g.err != nil {
		return g.err
	}
	st.OnHand = have
	r := restock.Of(&st, need)
	text := fmt.Sprintf("issue %d of %d, back-order %d, left %d", r.Issue(), need, r.Backorder(), r.After())
	order := "order nothing"
	if r.Order > 0 {
		order = fmt.Sprintf("order %d (%s of %d)", r.Order, packs(r.Order/st.Pack), st.Pack)
	}
	full := restock.SlowMover(&st)
	limits := restock.Limits
	few := ""
	if full.Few {
		few = "; few data, a hint only"
	}
	return sayAll(out, notes("issue", text, "need - issue = back-order; issue is the less of need and store", "common practice", "the store is counted as told"),
		notes("order", fmt.Sprintf("%s; reorder point %s; full set %d%s", order, r.Point(), r.FullSet(), few), restock.Formula, restock.Source, limits),
		notes("slow mover", fmt.Sprintf("reorder at %d", full.Point), full.Why, "the Poisson table of any text", restock.Limits))
}

// packs is a number of packs in words.
func packs(n int) string {
	if n == 1 {
		return "1 pack"
	}
	return fmt.Sprintf("%d packs", n)
}

// sumSets says how many whole sets there are, and what keeps the next one from
// being whole.
func sumSets(args []string, out io.Writer) error {
	g := readSum("sets", args, "", "")
	var needs []restock.Need
	for _, text := range g.plain {
		w := strings.Split(text, ":")
		if len(w) != 3 || strings.TrimSpace(w[0]) == "" {
			g.wrong("%q must be NAME:NEED:HAVE", text)
			break
		}
		needs = append(needs, restock.Need{Name: w[0], Need: int(g.figure("the need", w[1], 1, 10000)), Have: int(g.figure("what is there", w[2], 0, 100000))})
	}
	if g.err == nil && len(needs) == 0 {
		g.wrong("there is nothing that a set takes")
	}
	if g.err != nil {
		return g.err
	}
	sets, lacks := restock.Sets(needs)
	var words []string
	for _, l := range lacks {
		words = append(words, fmt.Sprintf("%d %s", l.N, l.Name))
	}
	return sayAll(out, sum.Answer{Name: "usable sets", Value: float64(sets), Unit: "sets",
		Text:    fmt.Sprintf("%d usable sets; the next one wants %s", sets, strings.Join(words, ", ")),
		Formula: "the least, over the kinds, of what is there divided by what a set takes, rounded down",
		Source:  "arithmetic", Limits: "pieces are taken to be in service; a percentage would hide the missing key"})
}
