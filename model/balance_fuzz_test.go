package model_test

import (
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// A balance that was damaged is either refused or a board that still works:
// the entries are there to fold instead.
func FuzzABalanceIsRefusedOrWorks(f *testing.F) {
	data, err := model.NewState(modeltest.Yard()).MarshalBalance()
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	f.Add([]byte(`{"format":2,"dept":{"Items":[{"ID":"A","Kit":"A","Quantity":1}]},"lines":[{"s":[{"p":"kit:A","n":1}]}],"scenes":[{}],"seen":{}}`))
	f.Add([]byte(`{}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, ok := model.RestoreBalance(data)
		if !ok {
			return
		}
		e := &model.Entry{Act: model.Act{Verb: model.PullOff, Quantity: 1, From: "home", To: "tarp"}, Seen: s.Seen()}
		e.Stamp = model.Stamp{Wall: 1, Device: "A"}
		for i := range s.Dept.Items {
			e.Item = s.Dept.Items[i].ID
			next := s.Clone()
			next.Apply(e)
			next.Account("", "")
			next.EndState()
		}
	})
}
