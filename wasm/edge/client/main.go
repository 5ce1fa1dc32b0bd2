// Command client shows how a program asks the service: it reads a job, turns the line speed up and down, and prints when the
// part is ready on each route.
//
//	drywright serve --api &
//	drywright demo | go run ./wasm/edge/client -service http://127.0.0.1:8417
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"net/http"
	"os"
	"time"
)

func main() {
	service := flag.String("service", "http://127.0.0.1:8417", "address of the service")
	flag.Parse()
	if err := run(*service, os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// document is a job of which this program knows no more than it changes.
type document map[string]any

func run(service string, in io.Reader, out io.Writer) error {
	var j document
	if err := json.NewDecoder(in).Decode(&j); err != nil {
		return fmt.Errorf("the job cannot be read: %w", err)
	}
	tunnel, ok := j["tunnel"].(map[string]any)
	if !ok {
		return fmt.Errorf("this job has no tunnel")
	}
	today, _ := tunnel["line_speed_m_per_s"].(float64)
	for _, times := range []float64{0.8, 1, 1.2} {
		tunnel["line_speed_m_per_s"] = today * times
		answer, err := predict(service, j)
		if err != nil {
			return err
		}
		for _, r := range answer.Result.Routes {
			if r.Kind == "tunnel" {
				fmt.Fprintf(out, "%3.0f %% of the speed: %s\n", 100*times, r.Answer.Text)
			}
		}
	}
	return nil
}

// predicted are the parts of an answer that this program reads; GET /v1/openapi.json describes all of it.
type predicted struct {
	Result struct {
		Routes []struct {
			Kind   string `json:"kind"`
			Answer struct {
				Text string `json:"text"`
			} `json:"answer"`
		} `json:"routes"`
	} `json:"result"`
}

// problem is what the service says where it does not answer (RFC 9457).
type problem struct {
	Title  string `json:"title"`
	Faults []struct {
		Text string `json:"text"`
	} `json:"faults"`
}

func predict(service string, j document) (predicted, error) {
	var answer predicted
	body, err := json.Marshal(map[string]any{"job": j})
	if err != nil {
		return answer, err
	}
	client := http.Client{Timeout: time.Minute}
	response, err := client.Post(service+"/v1/predict", "application/json", bytes.NewReader(body))
	if err != nil {
		return answer, err
	}
	defer response.Body.Close()
	d := json.NewDecoder(response.Body)
	if response.StatusCode == http.StatusOK {
		return answer, d.Decode(&answer)
	}
	var p problem
	if err := d.Decode(&p); err != nil {
		return answer, fmt.Errorf("the service answers %s", response.Status)
	}
	for _, f := range p.Faults {
		p.Title += "\n  " + f.Text
	}
	return answer, fmt.Errorf("%s", p.Title)
}
