rule = Stages and sections stand in the order of the job; a procedure is listed under its own stage.
