package model_test

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/modeltest"
)

func TestABoardFromABalanceGoesOnAsIfItHadNeverStopped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := started(t)
		for _, seed := range rows(t, 50) {
			l.Do(modeltest.Entry(modeltest.Rand(seed), l, "A", "B", "C"))
		}
		restored := l.Fork("A")
		restored.State = again(t, l.State)
		for i, seed := range rows(t, 20) {
			draw := modeltest.Rand(seed)
			e := modeltest.Entry(draw, l)
			if last := l.Entries[len(l.Entries)-1]; i%3 == 1 && len(last.Moves) == 1 { // now and then take the last move back
				from, _ := last.Moves[0].To.MarshalText()
				to, _ := last.Moves[0].From.MarshalText()
				e = model.Entry{Scene: last.Scene, Act: model.Act{Verb: model.Correct, Item: last.Item, Quantity: last.Moves[0].N,
					From: string(from), To: string(to)}}
			}
			x, y := said(l.Do(e)), said(restored.Do(e))
			if x != y {
				t.Fatalf("%s\nwith a balance\n%s", x, y)
			}
			if a, b := modeltest.Picture(l.State), modeltest.Picture(restored.State); a != b {
				t.Fatalf("%s\n%s\nwith a balance\n%s", x, a, b)
			}
		}
		a, _ := l.State.MarshalBalance()
		b, _ := restored.State.MarshalBalance()
		if !bytes.Equal(a, b) {
			t.Fatalf("%s\nwith a balance\n%s", a, b)
		}
	})
}

func TestDevicesThatMeetAfterABalanceNeedNotFoldWhatIsInIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := started(t)
		for _, seed := range rows(t, 50) {
			l.Do(modeltest.Entry(modeltest.Rand(seed), l, "A", "B", "C"))
		}
		balance, n := again(t, l.State), len(l.Entries)
		apart := []*modeltest.Log{l.Fork("A"), l.Fork("B")}
		later := []model.Entry{}
		for _, x := range apart {
			for _, seed := range rows(t, 20) {
				x.Do(modeltest.Entry(modeltest.Rand(seed), x))
			}
			later = append(later, x.Entries[n:]...)
		}
		for _, e := range model.Sorted(shuffled(t, later)) {
			balance.Apply(e)
		}
		same(t, append(l.Entries, later...), balance)
	})
}

func again(t *rapid.T, s *model.State) *model.State {
	data, err := s.MarshalBalance()
	if err != nil {
		t.Fatal(err)
	}
	r, ok := model.RestoreBalance(data)
	if !ok || modeltest.Picture(r) != modeltest.Picture(s) || r.Folded() != s.Folded() {
		t.Fatalf("%v: %s", ok, data)
	}
	return r
}

func TestWhatIsNoBalanceIsNotRead(t *testing.T) {
	good, err := model.NewState(modeltest.Yard()).MarshalBalance()
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := model.RestoreBalance(good); !ok {
		t.Fatal("a good one is not read")
	}
	for _, bad := range []string{
		"", "{}", "null", "[]", `{"format":1}`, `{"format":2,"dept":{},"scenes":[]}`, `{"format":2,"dept":{},"scenes":[null],"lines":[]}`,
		`{"format":2,"dept":{"Items":[{"ID":"X"}]},"scenes":[{"id":""}],"lines":[]}`,
		`{"format":2,"dept":{"Items":[{"ID":"X"}]},"scenes":[{"id":""}],"lines":[{}]}`,
		`{"format":2,"dept":{},"scenes":[{"id":""}],"lines":[],"trails":{"7":[{}]}}`,
		`{"format":2,"dept":{"Items":[{"ID":"X"}]},"scenes":[{"id":""}],"lines":[{"s":[],"u":{"b":[[0,9]]}}]}`,
		`{"format":2,"dept":{"Items":[{"ID":"X"}]},"scenes":[{"id":""}],"lines":[{"s":[],"u":{"b":[[-1,0]]}}]}`,
		string(bytes.Replace(good, []byte(`"format":2`), []byte(`"format":99`), 1)), string(good[:len(good)-2]),
	} {
		if s, ok := model.RestoreBalance([]byte(bad)); ok || s != nil {
			t.Errorf("read %q", bad)
		}
	}
}
