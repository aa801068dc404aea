not-sound = Fix these records first:
left-out = { $file } does not fit into what the first visit may save, so it is not there without a network
report-to =
    report_to in mkdocs.yml is “{ $address }”, which is no address for e-mail. Write one such as library@firm.example,
    or leave it empty.
