wrong = Something wrong here?
tell =
    Tell whoever runs this library which page it is, what is wrong and what is right. Leave out codes, and the names
    and addresses of customers.
