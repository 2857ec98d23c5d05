package job_test

import (
	"fmt"

	"scarfwright/repair/job"
)

func ExampleParse() {
	d, err := job.Parse("small.yaml", []byte(good))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, %s: panel %.0f x %.0f mm, input %s\n", d.Job.Number, d.Job.Title,
		d.Panel.Long.MM(), d.Panel.Short.MM(), job.Hash(d))
	// Output: T-1, A small hole: panel 600 x 400 mm, input f22e8710c614
}

func ExampleParse_problem() {
	_, err := job.Parse("small.yaml", []byte("format: 7\nboat:\n  use: hier\n"))
	fmt.Println(err)
	// Output:
	// small.yaml:1:9: This file is format 7; this program reads up to 1. Update the program, or export the job as format 1.
	//     1 | format: 7
	//       |         ^
}
