package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// signerKeys are the people who may sign: the first two of a list and a key
// that shows all. Whoever signs is touched by name; nobody signs by default.
type signerKeys struct {
	sh     *Shell
	title  string
	list   []string
	chosen string
	keys   [3]*parts.Key
	root   *fyne.Container
}

func newSignerKeys(sh *Shell) *signerKeys {
	s := &signerKeys{sh: sh}
	for i := range 2 {
		s.keys[i] = parts.NewKey(parts.KeyView{}, func() { s.choose(s.keys[i].View().ID) })
	}
	s.keys[2] = parts.NewKey(parts.KeyView{ID: "other-member", Title: words.L("Other")}, s.all)
	s.root = box(func(size fyne.Size) {
		gap := look.U(look.Gap)
		w := (size.Width - 2*gap) / 3
		for i, k := range s.keys {
			place(k, float32(i)*(w+gap), 0, w, size.Height)
		}
	}, s.keys[0], s.keys[1], s.keys[2])
	return s
}

// choose takes a member, or lets him go again.
func (s *signerKeys) choose(id string) {
	if s.chosen == id {
		id = ""
	}
	s.chosen = id
	s.sh.refresh()
}

// all shows everybody who may sign.
func (s *signerKeys) all() {
	n := s.sh.now()
	var list []choice
	for _, id := range s.list {
		m := n.d.Member(id)
		if m == nil {
			continue
		}
		where := n.partyName(m.Rig)
		list = append(list, choice{kind: parts.KindMember, id: id, title: n.memberFull(id), second: join(m.Role, where), mark: n.crewMark(m)})
	}
	s.sh.open(newChooser(s.sh, words.L("Who signs?"), s.title, list, func(id string) {
		s.chosen = id
		s.sh.back()
	}))
}

// show brings the keys up to date. The first two are the likeliest, or one of
// them is whoever was chosen from the whole list.
func (s *signerKeys) show(n *now, title string, list []string) {
	s.title, s.list = title, list
	if s.chosen != "" && !slices.Contains(list, s.chosen) {
		s.chosen = ""
	}
	first := list[:min(2, len(list)):min(2, len(list))]
	if s.chosen != "" && !slices.Contains(first, s.chosen) {
		first = append(first[:min(1, len(first)):1], s.chosen)
	}
	for i := range 2 {
		v := parts.KeyView{Kind: parts.KindMember, Off: true, Title: words.L("Nobody is listed"), Lay: parts.LayCentre, Role: look.BodyBold}
		if i < len(first) {
			m := first[i]
			v.ID, v.Title, v.Off = m, n.memberShort(m), false
			if m == s.chosen {
				v.Tone, v.State, v.Second = parts.Live, "chosen", words.L("signs")
			}
		}
		s.keys[i].Set(v)
	}
	s.keys[2].Set(parts.KeyView{ID: "other-member", Title: words.L("Other"), Lay: parts.LayCentre, Role: look.BodyBold, Off: len(list) == 0})
}
