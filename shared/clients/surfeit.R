# Asks a Surfeit service from R 4.1 or newer, with the packages httr2 and jsonlite.
# Not run by the project's tests. Every function was run once by hand, with R 4.2.2 and httr2 0.2.2, on 2026-11-30.
#
#   source("surfeit.R")
#   lab <- surfeit_lab("http://127.0.0.1:8420")          # the token is read from SURFEIT_TOKEN
#   surfeit_describe(lab, "lot-7", list(alloy = "ag-cu-eutectic", beam_energy_kev = 15))
#   surfeit_post_table(lab, "lot-7", "my-spots.csv")
#   surfeit_segregation(lab, "lot-7")                     # a data frame, one row per group and element
#   boxplot(atomic_percent ~ feature, subset(surfeit_results(lab, sample = "lot-7"), element == "Cu"))
#
# A refusal becomes an R error that names each fault.

surfeit_lab <- function(url = Sys.getenv("SURFEIT_URL", "http://127.0.0.1:8420"), token = Sys.getenv("SURFEIT_TOKEN")) {
  list(url = url, token = token)
}

# One request; query is a list, steps are the parts of the path after /v1, each as it is named in the lab.
surfeit_request <- function(lab, ..., query = list(), suffix = "") {
  steps <- vapply(list(...), utils::URLencode, "", reserved = TRUE)
  request <- httr2::request(paste0(lab$url, "/v1/", paste(steps, collapse = "/"), suffix))
  request <- httr2::req_url_query(request, !!!query)
  if (nzchar(lab$token)) {
    request <- httr2::req_auth_bearer_token(request, lab$token)
  }
  request <- httr2::req_retry(request, max_tries = 4)
  httr2::req_error(request, body = surfeit_refusal)
}

surfeit_refusal <- function(answer) {
  problem <- httr2::resp_body_json(answer, check_type = FALSE)
  faults <- vapply(problem$errors, function(fault) {
    place <- c(if (!is.null(fault$line)) paste("line", fault$line),
               if (!is.null(fault$column)) paste("column", fault$column), fault$column_name, fault$pointer)
    paste0(paste(place, collapse = " "), ": ", fault$detail)
  }, "")
  c(problem$detail, faults)
}

surfeit_table <- function(request) {
  rows <- utils::read.csv(text = httr2::resp_body_string(httr2::req_perform(request)), check.names = FALSE,
                          na.strings = "", stringsAsFactors = FALSE)
  rows[] <- lapply(rows, function(column) {
    if (all(column %in% c("true", "false", NA))) column == "true" else column
  })
  rows
}

# Gives a sample its description; changing one on record needs the revision the change starts from.
surfeit_describe <- function(lab, sample, description, revision = NULL) {
  request <- httr2::req_method(httr2::req_body_json(surfeit_request(lab, "samples", sample), description), "PUT")
  if (!is.null(revision)) {
    request <- httr2::req_headers(request, `If-Match` = paste0('"', revision, '"'))
  }
  httr2::resp_body_json(httr2::req_perform(request))
}

# Records a file as the workstation exported it; the same file again changes nothing. Further arguments, such as
# unit = "at%", become query parameters.
surfeit_post_table <- function(lab, sample, file, ...) {
  bytes <- readBin(file, "raw", file.size(file))
  request <- httr2::req_body_raw(surfeit_request(lab, "samples", sample, "spots", query = list(...)), bytes, "text/csv")
  httr2::resp_body_json(httr2::req_perform(request))
}

# What the spots of a sample show, as a data frame with a row per group and element.
surfeit_segregation <- function(lab, sample, by = "feature") {
  surfeit_table(surfeit_request(lab, "samples", sample, "segregation", query = list(by = by), suffix = ".csv"))
}

# The same as a text to read.
surfeit_report <- function(lab, sample, by = "feature") {
  request <- surfeit_request(lab, "samples", sample, "segregation", query = list(by = by), suffix = ".md")
  httr2::resp_body_string(httr2::req_perform(request))
}

# Two samples against each other, as a data frame.
surfeit_compare <- function(lab, a, b, same_particles = FALSE) {
  surfeit_table(surfeit_request(lab, "comparisons", suffix = ".csv",
                                query = list(a = a, b = b, same_particles = tolower(as.character(same_particles)))))
}

# Keeps today's answer for ever; returns its id.
surfeit_freeze <- function(lab, sample, by = "feature") {
  request <- surfeit_request(lab, "samples", sample, "interpretations", query = list(by = by))
  request <- httr2::req_method(request, "POST")
  httr2::resp_body_json(httr2::req_perform(request))$id
}

# Every result, one row per spot and element; filters such as sample = "lot-7", element = "Cu".
surfeit_results <- function(lab, ...) {
  surfeit_table(surfeit_request(lab, "results", query = list(...), suffix = ".csv"))
}
