package stores_test

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"tarpside/board/stores"
)

// few is a department with little in it, so that the fuzzer is quick: a bay
// behind two doors, a kit, a counted lot, a consumable with its stock.
var few = map[string]string{
	"rigs":  "rig,name,agency,role,seats,mark_words,mark_shape,mark_color\nR41,Rescue 41,MBFR,heavy,6,\"two rings, R41\",circle,white\n",
	"slots": "slot,rig,compartment,side,description,hand_height_in,depth,lap\nS1,R41,T2,left,tray,26.5,0,2\nS2,R41,T2,right,tray,26,0,8\nS3,R41,T2,through,centre,30,2,2\n",
	"items": itemsHead + "A,Strut,,prop; shore,R41,S3,piece,1,ea,23,,clean,strut,yes,no,no,no,1,1,,A\nB,Crate,,,R41,S1,kit,1,ea,,,,,no,yes,no,no,,1,,B\n" +
		"C,Crate 2,Crate two,,R41,S2,piece,1,ea,5,,battery>=80,,no,no,no,no,1,1,,C\nD,Wedge,,,R41,S1,counted,12,ea,1.5,B,,,no,no,yes,yes,8,2,,D\nE,Tape,,,R41,,consumable,2,roll,1,,,,no,no,no,no,,3,ST1,E\n",
	"stow_rules": "first,then,closes,group,why\nA,B,both_ends,G,left end\nA,C,both_ends,G,right end\n",
	"checks":     "check,question,answer,passes,if_it_fails,override\nbattery,Charge,number 0-100,,,officer\nclean,Clean,yes/no,yes,bag,\"officer, never when blood\"\nrope,Rope,yes/no,yes,,never\n",
	"members":    "member,name,role,officer,agency,rig\nM1,Augusta Renwick,Chief,yes,MBFR,command\n",
	"agencies":   "agency,name,kind,phone\nMBFR,Marrow Bend,home,555-0141\n",
	"places":     "place,meaning\nV1,car on its side\n",
	"stock":      "stock,name,on_hand,weekly_mean,weekly_sd,lead_weeks,pack\nST1,Tape,4,0.6,0.8,1,1\n",
	"pull_lists": "list,item,name,quantity,need,season,note\nCar,A,Strut,1,must,any,\n",
}

// FuzzRead puts a table in the place of another: it never panics, and what it
// takes is written and read again as it was.
func FuzzRead(f *testing.F) {
	base := fstest.MapFS{}
	for i, n := range names {
		base[n+".csv"] = &fstest.MapFile{Data: []byte(few[n])}
		f.Add(byte(i), []byte(few[n]))
		f.Add(byte(i), []byte(strings.ReplaceAll(few[n], "\n", "\r\n")))
	}
	if _, problems := stores.Read(base); problems != nil {
		f.Fatal(problems)
	}
	for _, s := range []string{
		"", "\xef\xbb\xbf", "place,meaning\r\n\"V1\",\"a \"\"b\"\"\r\nc\"", "meaning,place,serial\n,V1,7\n\n,V2,\n",
		"place;meaning\nV1;x\n", "place,meaning\n\"V1,x\n", "place,meaning,\nV1,\xff,\n", "place,meaning\rV1,x\r", ",\n,\n",
	} {
		f.Add(byte(8), []byte(s))
	}
	f.Add(byte(2), []byte(itemsHead+"A,A,,,R41,,kit,1,,,B,,,,,,,,,,\nB,B,,,R41,,kit,1,,,A,count,,,,,,,,,\n"))
	f.Add(byte(3), []byte("first,then,closes,group,why\nA,B,both_ends,G,\nB,A,alone,,\n"))
	f.Add(byte(4), []byte("check,question,answer,passes,if_it_fails,override\nbattery,Q,number 0.5-.7,,,\"officer, never when x\"\n"))
	f.Fuzz(func(t *testing.T, table byte, data []byte) {
		files := fstest.MapFS{}
		for n, file := range base {
			files[n] = file
		}
		name := names[int(table)%len(names)]
		files[name+".csv"] = &fstest.MapFile{Data: data}
		d, problems := stores.Read(files)
		if len(problems) > 0 {
			if d != nil {
				t.Fatal("a department in spite of problems")
			}
			return
		}
		out := fstest.MapFS{}
		for _, n := range names {
			var b bytes.Buffer
			if err := stores.WriteTo(&b, n, d); err != nil {
				t.Fatal(err)
			}
			out[n+".csv"] = &fstest.MapFile{Data: b.Bytes()}
		}
		again, problems := stores.Read(out)
		if err := problems.Err(); err != nil {
			t.Fatalf("what was taken is not taken again:\n%v\n%s", err, out[name+".csv"].Data)
		}
		if !reflect.DeepEqual(again, d) {
			t.Fatalf("it changed on the way:\n%s", out[name+".csv"].Data)
		}
		if _, changes := stores.Diff(d, again); len(changes) > 0 {
			t.Fatalf("changes out of nowhere: %v", changes)
		}
	})
}
