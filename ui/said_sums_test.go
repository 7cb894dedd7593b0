package ui

import (
	"math/rand/v2"
	"strings"
	"testing"

	"tarpside/model/clearup"
	"tarpside/model/gauge"
	"tarpside/model/lift"
	"tarpside/model/look"
	"tarpside/model/match"
	"tarpside/model/restock"
	"tarpside/model/rundown"
	"tarpside/model/sum"
	litter "tarpside/model/trail"
)

// answer holds every text of a sum, or the error in its place.
func (s *sayings) answer(a sum.Answer, err error) {
	s.t.Helper()
	if err != nil {
		s.hold("error", err.Error())
		return
	}
	for _, text := range []string{a.Name, a.Text, a.Formula, a.Source, a.Limits} {
		s.hold(a.Name, text)
	}
}

// draws are numbers for the sums: mostly such as there are, a few that cannot
// be.
type draws struct{ *rand.Rand }

func (d draws) upTo(most float64) float64 {
	if d.IntN(12) == 0 {
		return []float64{0, -1, 1e9, most * 1.2}[d.IntN(4)]
	}
	return sum.Round(d.Float64()*most, d.IntN(3))
}

func (d draws) yes() bool { return d.IntN(3) == 0 }

func (d draws) oxygen() (gauge.Oxygen, error) {
	o := gauge.Oxygen{Flow: d.upTo(25), Keep: []float64{200, 200, 0, 500}[d.IntN(4)]}
	for range d.IntN(4) {
		o.Readings = append(o.Readings, gauge.Pressure{Min: 10*float64(len(o.Readings)) + d.upTo(9), PSI: d.upTo(2200)})
	}
	var err error
	if o.Cylinder, err = gauge.Named([]string{"D", "E", "M", "H", "Q"}[d.IntN(5)]); d.yes() {
		o.Cylinder, err = gauge.Sized(d.upTo(2000), d.upTo(3000))
	}
	return o, err
}

func (d draws) run() (gauge.Run, error) {
	r := gauge.Run{Kind: gauge.Kind(d.IntN(2)), Floor: d.upTo(60), Table: gauge.Figure(d.upTo(300))}
	level := d.upTo(100)
	for range d.IntN(5) {
		r.Levels = append(r.Levels, gauge.Percent(10*float64(len(r.Levels))+d.upTo(9), level))
		level -= d.upTo(20) - 2
	}
	var err error
	if d.yes() {
		r.Table, err = gauge.Typical([]string{"chain saw", "generator", "kettle"}[d.IntN(3)])
	}
	if d.yes() && err == nil {
		r.Cold, err = gauge.ColdAt(d.upTo(100) - 20)
	}
	if d.yes() && err == nil {
		var l gauge.Level
		l, err = gauge.Bars(1, d.IntN(6), d.IntN(6))
		r.Levels = append([]gauge.Level{l}, r.Levels...)
	}
	return r, err
}

func (d draws) lift() lift.Lift {
	l := lift.Lift{Metric: d.yes(), Load: d.upTo(200), From: lift.Hold{H: d.upTo(30), V: d.upTo(75), A: d.upTo(150)},
		To: lift.Hold{H: d.upTo(30), V: d.upTo(75), A: d.upTo(150)}, Often: d.upTo(3), Hours: d.upTo(9), Grip: lift.Grip(d.IntN(4)), Coupling: d.upTo(0.3)}
	if d.yes() {
		l.Often, l.Coupling, l.From.A, l.To.A = 0.2, 0, 0, 0
	}
	for range d.IntN(3) {
		l.Outside = append(l.Outside, lift.Outside(d.IntN(10)))
	}
	return l
}

func (d draws) trip() litter.Trip {
	return litter.Trip{Season: []litter.Season{"", litter.Summer, litter.Winter}[d.IntN(3)], Heat: []litter.Heat{"", litter.Cool, litter.Mild, litter.Hot}[d.IntN(4)],
		Path: []litter.Path{"", litter.Good, litter.Rough, litter.Steep}[d.IntN(4)], Night: d.yes(), Wet: d.yes(), Snow: d.yes(), Ice: d.yes(), Slope: d.yes(),
		Raise: d.yes(), OffPath: d.yes(), Agency: d.yes(), Km: d.upTo(10), ClimbM: d.upTo(900), Hours: d.upTo(14), PatientLb: d.upTo(300)}
}

func TestEveryWorkedFigureIsSaidInAnotherLanguage(t *testing.T) {
	speakPseudo(t)
	s := sayings{t, gauge.Tools(), map[string]bool{}}
	for seed := range uint64(1000) {
		d := draws{rand.New(rand.NewPCG(seed, 1))}
		if o, err := d.oxygen(); err != nil {
			s.answer(sum.Answer{}, err)
		} else {
			a, err := o.Left()
			s.answer(a.Answer, err)
			s.answer(gauge.Ready(o.Cylinder, d.upTo(15), d.upTo(60), o.Keep))
		}
		if r, err := d.run(); err != nil {
			s.answer(sum.Answer{}, err)
		} else {
			a, err := r.Left()
			s.answer(a.Answer, err)
		}
		air, err := gauge.Air{Litres: d.upTo(2000), FullPSI: d.upTo(5000), PSI: d.upTo(5000), Rate: d.upTo(100), Alarm: d.upTo(0.4)}.Stock()
		s.answer(air.Answer, err)
		work, err := d.lift().Work()
		s.answer(work.Answer, err)
		marks, err := lift.Propose(d.lift())
		s.answer(marks.Answer, err)
		s.answer(lift.TeamLimit("lb", make([]float64, d.IntN(5))...))
		var done []clearup.Done
		for i := range d.IntN(40) {
			done = append(done, clearup.Done{At: int64(i) * 60000, Work: clearup.Work{Singles: 1}})
		}
		s.answer(clearup.Time(clearup.Work{Singles: d.IntN(30), Kits: d.IntN(3), TwoPerson: d.IntN(2)}, 1+d.IntN(4), done, []string{"Ф", "Б"}[:d.IntN(3)]), nil)
		trip, people := d.trip(), d.IntN(20)
		s.answer(trip.Bearers(people), nil)
		s.answer(litter.BearerLoad(trip.PatientLb, d.upTo(60), d.IntN(8), trip.Path, d.upTo(40)), nil)
		for _, f := range []func() (sum.Answer, bool){trip.In, trip.Out, trip.Changes, func() (sum.Answer, bool) { return trip.Water(people) }} {
			a, _ := f()
			s.answer(a, nil)
		}
	}
	for _, text := range []string{look.Formula, look.Source, look.Limits, match.Formula, match.Source, match.Limits, restock.Formula, restock.Source, restock.Limits} {
		s.hold("how", text)
	}
}

func TestEveryWordAboutTheDemoIsSaidInAnotherLanguage(t *testing.T) {
	speakPseudo(t)
	tables, cells := foreign(t)
	s := sayings{t, cells, map[string]bool{}}
	for _, minute := range []int{45, 90, 125, 150, 177} {
		n := tablesAt(t, tables, minute, ScreenTarp, glass1280, glassLook(glass1280, 1)).shell.now()
		lim := rundown.Usual()
		lim.Cold = minute == 90
		figures := rundown.Figures(n.s, n.pic.Entries, n.scene.ID, n.at.UnixMilli(), lim)
		for _, f := range figures {
			s.answer(f.Sum, nil)
		}
		for _, o := range rundown.Longs(n.s, n.pic.Entries, n.scene.ID, n.at.UnixMilli()+3600000, lim, figures) {
			s.hold("long", o.Words(cyrillic(n.d.Items[o.Line].Name), "V1"))
			s.hold("class", o.Class.Name)
			s.hold("class", o.Class.Why)
		}
		for i := range n.d.Items {
			for _, a := range n.d.Items[i].Checks {
				for _, x := range []float64{0, 3, 50, 2500, 1e6} {
					if err := rundown.Refuse(n.d, &n.d.Items[i], a.Check, x); err != nil {
						s.hold("refused", err.Error())
					}
				}
			}
		}
		var own []string // the conditions of the lists are the department's own words
		for _, p := range n.d.Pulls {
			if _, when, _ := strings.Cut(p.Need, " if "); when != "" {
				own = append(own, when, "")
			}
			if p.Season != "any" {
				own = append(own, p.Season, "")
			}
		}
		conditions := strings.NewReplacer(own...)
		for seed := range uint64(40) {
			d := draws{rand.New(rand.NewPCG(seed, 2))}
			p := litter.Party{Trip: d.trip(), List: n.d.Pulls[d.IntN(len(n.d.Pulls))].List}
			for range d.IntN(5) {
				p.AddNoName()
			}
			asked, lines := p.Lines(n.s)
			for _, l := range append(asked, lines...) {
				s.hold("line", conditions.Replace(l.Why))
			}
			load := litter.Packs(lines, p.Carriers(n.d))
			drops, over := litter.Drops(lines, load.Limit)
			for _, drop := range drops {
				s.hold("drop", drop.Why)
			}
			s.answer(load.Answer(), nil)
			s.answer(litter.Leaving(drops, over), nil)
		}
	}
}
